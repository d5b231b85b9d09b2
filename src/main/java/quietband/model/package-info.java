/**
 * The design as written. {@link quietband.model.edit.ModelFile} reads a model file, checks it along the one description of
 * the format ({@code model.format.ModelForm}) and gives the immutable {@link quietband.model.Design}; every number of it stands in
 * {@link quietband.model.quantity.Quantities} under its path, and a design with other numbers takes a microsecond. The same
 * description prints the JSON Schema and guides changes to the text, which keep comments. Alone uses YAML.
 */
package quietband.model;
