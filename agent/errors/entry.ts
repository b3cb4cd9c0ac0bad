/** An error as people are told it; `{name}` is filled from the facts. */
export interface ErrorEntry {
  readonly happened: string;
  readonly fix: string;
}
