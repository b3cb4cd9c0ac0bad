/** A clause of the parsers as a sentence. */
export const sentence = (clause: string): string => {
  const text = `${clause.charAt(0).toUpperCase()}${clause.slice(1)}`;
  return /[.?!]$/.test(text) ? text : `${text}.`;
};
