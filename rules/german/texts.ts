/** German for English texts of the rules: each whole text by its English, placeholders and all. */
export type Texts = Readonly<Record<string, string>>;
