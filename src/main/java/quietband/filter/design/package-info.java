/**
 * The whole task: checks, search, facts about the found filter, the changed model.
 */
package quietband.filter.design;
