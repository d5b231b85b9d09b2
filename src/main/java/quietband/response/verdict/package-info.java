/**
 * The verdict: coverage, worst points, requirements judged one by one.
 */
package quietband.response.verdict;
