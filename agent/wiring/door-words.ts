/** The door's faults in the agent's words. */
import { DoorError, type DoorFault } from '#broker/door-error.ts';
import { AgentError } from '../errors.ts';

/** Anything but a fault of the door passes through. */
export const doorError = (error: unknown): unknown =>
  error instanceof DoorError ? faultError(error.fault, error) : error;

export function faultError(fault: DoorFault, cause?: unknown): AgentError {
  switch (fault.kind) {
    case 'devices-gone':
      return new AgentError('DEVICE_FILE_GONE', fault, cause);
    case 'devices-broken':
      return new AgentError('DEVICE_FILE_BROKEN', fault, cause);
    case 'devices-failed':
      return new AgentError('DEVICE_FILE_FAILED', fault, cause);
    case 'devices-not-kept':
      return new AgentError('DEVICE_FILE_NOT_KEPT', fault, cause);
    case 'needs-devices':
      return new AgentError('MQTT_NEEDS_DEVICES', fault, cause);
    case 'cannot-listen':
      return new AgentError('MQTT_CANNOT_LISTEN', fault, cause);
  }
}

/** What health says of a list that is not the one followed. */
export function devicesWords(fault: DoorFault | null): string | null {
  if (fault === null) return null;
  const { message, fix } = faultError(fault);
  if (fault.kind === 'devices-not-kept') return `${message} ${fix}`;
  const kept = 'The devices it last named are let in meanwhile, and nobody else.';
  return fix.includes(kept) ? `${message} ${fix}` : `${message} ${fix} ${kept}`;
}

/** Said at the start as well: whoever starts it may look nowhere else. */
export function tellDevices(fault: DoorFault | null, log: { error(words: string): void }): void {
  const words = devicesWords(fault);
  if (words !== null) log.error(words);
}
