/**
 * Browser and system in a few words, for people to tell their own sessions apart. Of what the browser sends
 * only these words are kept. The marks are as browsers send them (from memory of RFC 9110, section 10.1.5,
 * and of their User-Agent strings); who looks like another is called that other.
 */
type Mark = readonly [mark: RegExp, words: string];

/** The first that fits: several browsers carry the marks of others too. */
const browsers: readonly Mark[] = [
  [/\bEdg(?:e|A|iOS)?\//, 'Edge'],
  [/\bOPR\//, 'Opera'],
  [/\bSamsungBrowser\//, 'Samsung Internet'],
  [/\b(?:Firefox|FxiOS)\//, 'Firefox'],
  [/\b(?:Headless)?Chrom(?:e|ium)\/|\bCriOS\//, 'Chrome'],
  [/\bSafari\//, 'Safari'],
];
const systems: readonly Mark[] = [
  [/\biPhone\b/, 'iPhone'],
  [/\biPad\b/, 'iPad'],
  [/\bAndroid\b/, 'Android'],
  [/\bCrOS\b/, 'ChromeOS'],
  [/\bWindows\b/, 'Windows'],
  [/\bMacintosh\b/, 'Mac'],
  [/\bLinux\b/, 'Linux'],
];

const first = (marks: readonly Mark[], text: string): string[] =>
  marks.flatMap(([mark, words]) => (mark.test(text) ? [words] : [])).slice(0, 1);

/** "Firefox, Android"; null where none of it is known. */
export function deviceWords(userAgent: string | undefined): string | null {
  const text = (userAgent ?? '').slice(0, 500);
  const words = [...first(browsers, text), ...first(systems, text)];
  return words.length === 0 ? null : words.join(', ');
}
