/**
 * A file's bytes as lines of text, in blocks, with bounded memory.
 *
 * UTF-8 unless a byte-order mark says UTF-16; bytes that are neither end the reading. Lines end
 * in LF or CRLF.
 */
export interface LineBlock {
  /** Number of the block's first line, counted from 1. */
  readonly firstLine: number;
  /** Without their ends; null stands for a line longer than allowed. */
  readonly lines: readonly (string | null)[];
}

/** Thrown for bytes that are no text. */
export class NotText extends Error {}

function encodingOf(start: Uint8Array): string {
  if (start[0] === 0xff && start[1] === 0xfe) return 'utf-16le';
  return start[0] === 0xfe && start[1] === 0xff ? 'utf-16be' : 'utf-8';
}

/** The text of the bytes, mark removed. Throws NotText. */
async function* textOf(chunks: AsyncIterable<Uint8Array>): AsyncGenerator<string> {
  let decoder: InstanceType<typeof TextDecoder> | null = null;
  let start: Uint8Array = new Uint8Array(0);
  const decode = (bytes: Uint8Array, stream: boolean): string => {
    decoder ??= new TextDecoder(encodingOf(bytes), { fatal: true });
    try {
      return decoder.decode(bytes, { stream });
    } catch (cause) {
      throw new NotText('neither UTF-8 nor UTF-16', { cause });
    }
  };
  for await (const chunk of chunks) {
    if (decoder !== null) {
      yield decode(chunk, true);
      continue;
    }
    // The mark is two bytes; a first chunk may be shorter.
    start = Buffer.concat([start, chunk]);
    if (start.length >= 2) yield decode(start, true);
  }
  yield decoder === null ? decode(start, false) : decode(new Uint8Array(0), false);
}

const withoutReturn = (line: string): string => (line.endsWith('\r') ? line.slice(0, -1) : line);

/** Throws NotText where the bytes are neither UTF-8 nor marked UTF-16. */
export async function* linesOf(
  chunks: AsyncIterable<Uint8Array>,
  lengthMax: number,
): AsyncGenerator<LineBlock> {
  let rest = '';
  /** The line under way is too long; the rest of it is not kept. */
  let tooLong = false;
  let firstLine = 1;
  const finished = (line: string): string | null => {
    const whole = tooLong || line.length > lengthMax ? null : withoutReturn(line);
    tooLong = false;
    return whole;
  };
  for await (const text of textOf(chunks)) {
    const parts = (rest + text).split('\n');
    rest = parts.pop()!;
    const lines = parts.map(finished);
    if (rest.length > lengthMax) {
      tooLong = true;
      rest = '';
    }
    if (lines.length > 0) yield { firstLine, lines };
    firstLine += lines.length;
  }
  if (rest !== '' || tooLong) yield { firstLine, lines: [finished(rest)] };
}
