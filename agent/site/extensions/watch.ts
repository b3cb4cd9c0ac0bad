/** Who looks on while a file of the site's own rules is called; a replay has nobody. */
export interface CallWatch {
  /** It is about to be called. */
  enter(extension: string): void;
  /** It came back. */
  leave(extension: string): void;
  /** It threw, or gave what cannot be used; a sentence for people, with the line where there is one. */
  fault(extension: string, words: string): void;
  /** Nobody may call it. */
  isOff(extension: string): boolean;
}

export const nobody: CallWatch = {
  enter: () => undefined,
  leave: () => undefined,
  fault: () => undefined,
  isOff: () => false,
};

/** The file as the site file names it, of `RuleKind.extension`. */
export const fileOf = (extension: string): string => extension.slice(0, extension.lastIndexOf('@'));

/** Which text of it: the beginning of its SHA-256. */
export const textHash = (extension: string): string =>
  extension.slice(extension.lastIndexOf('@') + 1);
