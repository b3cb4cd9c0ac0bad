/**
 * Tells listeners of the stream when the condition of a part of the agent changes, or what is to be
 * mended in the site file: whoever mends it reads there how far it is.
 */
import type { CorePorts } from './web-ports.ts';

export class HealthChanges {
  private readonly ports: () => CorePorts | null;
  private last = '';

  constructor(ports: () => CorePorts | null) {
    this.ports = ports;
  }

  look(): void {
    const ports = this.ports();
    if (ports === null) return;
    const { parts, notes } = ports.health();
    const now = JSON.stringify([parts, notes.site]);
    if (this.last !== '' && now !== this.last) ports.tellHealth();
    this.last = now;
  }
}
