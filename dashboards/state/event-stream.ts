/**
 * Server-sent events read from a streamed answer, after the HTML standard, section 9.2.6.
 *
 * The browser's own EventSource tells nobody of the comments by which the agent shows that it is
 * there; here every byte counts as heard.
 */
export interface StreamedEvent {
  readonly event: string;
  readonly data: string;
}

/** Takes text as it comes, gives whole events; keeps the last id. */
export class EventParser {
  lastId = '';
  private rest = '';
  private event = '';
  private data: string[] = [];

  /** A new connection: what the last one left half said is void; the id stays. */
  begin(): void {
    this.rest = '';
    this.event = '';
    this.data = [];
  }

  take(text: string): StreamedEvent[] {
    const found: StreamedEvent[] = [];
    const lines = (this.rest + text).split('\n');
    this.rest = lines.pop() ?? '';
    for (const line of lines) {
      const whole = this.takeLine(line.endsWith('\r') ? line.slice(0, -1) : line);
      if (whole !== null) found.push(whole);
    }
    return found;
  }

  private takeLine(line: string): StreamedEvent | null {
    if (line === '') return this.dispatch();
    if (line.startsWith(':')) return null;
    const colon = line.indexOf(':');
    const field = colon < 0 ? line : line.slice(0, colon);
    const value = colon < 0 ? '' : line.slice(colon + 1).replace(/^ /, '');
    if (field === 'event') this.event = value;
    else if (field === 'data') this.data.push(value);
    else if (field === 'id' && !value.includes('\0')) this.lastId = value;
    return null;
  }

  private dispatch(): StreamedEvent | null {
    const { event, data } = this;
    this.event = '';
    this.data = [];
    return data.length === 0
      ? null
      : { event: event === '' ? 'message' : event, data: data.join('\n') };
  }
}
