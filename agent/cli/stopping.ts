/**
 * Whether somebody asked this process to stop.
 *
 * It listens from its making on, so before anybody reads `ready`. A terminal and npm may both pass
 * Ctrl-C on: a second one changes nothing.
 */
export class Stopping {
  isAsked = false;
  readonly asked: Promise<void>;

  constructor() {
    const { promise, resolve } = Promise.withResolvers<void>();
    this.asked = promise;
    const ask = (): void => {
      this.isAsked = true;
      resolve();
    };
    process.on('SIGINT', ask);
    process.on('SIGTERM', ask);
  }
}
