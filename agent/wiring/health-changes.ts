/** Tells listeners of the stream when the condition of a part of the agent changes. */
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
    const now = JSON.stringify(ports.health().parts);
    if (this.last !== '' && now !== this.last) ports.tellHealth();
    this.last = now;
  }
}
