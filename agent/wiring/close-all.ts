/** Closing several things of which each may fail. */

/** Closes all of them, whatever one of them says; then throws what the first that failed said. */
export async function closeAll(closers: readonly (() => void | Promise<void>)[]): Promise<void> {
  const failures: unknown[] = [];
  for (const close of closers) {
    try {
      await close();
    } catch (error) {
      failures.push(error);
    }
  }
  if (failures.length > 0) throw failures[0];
}
