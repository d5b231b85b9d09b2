/**
 * Numbers with units: what each kind of quantity may be written in, reading and printing without loss, and an
 * explanation of a wrong unit that a person can act on. Main types: {@link quietband.units.Dimension} and
 * {@link quietband.units.Amounts}.
 */
package quietband.units;
