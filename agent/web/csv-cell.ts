/** Cells of CSV (RFC 4180) that a spreadsheet takes for what they are. */

/** First characters that spreadsheets take for a formula (OWASP, "CSV Injection"). */
const formula = /^[=+\-@\t\r]/;

/** A cell of text. */
export function csvText(text: string): string {
  const safe = formula.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
