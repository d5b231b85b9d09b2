/**
 * Model files as a whole: read, changed by path so that the rest of the text stays byte for byte, and written with
 * the files they refer to.
 *
 * <p>For other rooms: {@link quietband.model.edit.ModelFile}, {@link quietband.model.edit.ModelBundle},
 * {@link quietband.model.edit.StartModel}.
 *
 * <p>With them: {@link quietband.model.edit.FileValue}.
 */
package quietband.model.edit;
