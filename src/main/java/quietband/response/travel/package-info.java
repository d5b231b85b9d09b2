/**
 * Travel of the platform: sag, sustained, random, shock; springs that go slack.
 */
package quietband.response.travel;
