/** Errors of the MQTT door and its devices. */
import type { ErrorEntry } from './entry.ts';

export const doorErrors = {
  MQTT_NEEDS_DEVICES: {
    happened: 'MQTT would listen on {host}, open to the network, and no device has a secret yet.',
    fix: 'Add devices with "forebond device add", or listen on 127.0.0.1.',
  },
  MQTT_CANNOT_LISTEN: {
    happened: 'MQTT cannot listen on {host}:{port}: {reason}.',
    fix: 'Stop what holds that port, or name another with --mqtt HOST:PORT.',
  },
  DEVICE_FILE_BROKEN: {
    happened: 'The list of devices {path} is not usable: {problems}.',
    fix: 'Mend it, or move it away and add the devices again.',
  },
  DEVICE_FILE_GONE: {
    happened: 'The list of devices {path} is gone.',
    fix: 'Put it back (devices-last.json beside it is its copy), or add the devices again with "forebond device add". The devices it last named are let in meanwhile, and nobody else.',
  },
  DEVICE_FILE_NOT_KEPT: {
    happened: 'The copy of the list of devices {path} cannot be written: {reason}.',
    fix: 'Make room on the disk, or give the folder back to the agent; it is tried again every second. Without the copy a list that is taken away leaves MQTT open to this machine at the next start.',
  },
  DEVICE_FILE_FAILED: {
    happened: 'The list of devices {path} cannot be read or written: {reason}.',
    fix: 'Check that the folder exists and belongs to you.',
  },
  DEVICE_USER_INVALID: {
    happened: '"{user}" cannot be the name of a device.',
    fix: 'Use 1 to 64 letters, digits, dots, hyphens or underscores.',
  },
  DEVICE_EXISTS: {
    happened: 'There is a device "{user}" already.',
    fix: 'Remove it first to give it another secret, or choose another name.',
  },
  DEVICE_UNKNOWN: {
    happened: 'There is no device "{user}".',
    fix: 'See the devices there are with "forebond device list".',
  },
  DEVICE_FILTER_INVALID: {
    happened: 'The topic filter "{filter}" cannot be used to {verb}: {reason}.',
    fix: 'Write MQTT filters: + is a whole level, # the whole last level.',
  },
  DEVICE_SECRET_UNUSABLE: {
    happened: 'The secret on standard input cannot be used: {reason}.',
    fix: 'Send one line of 16 to 1,024 bytes, or leave --secret-stdin out to have a secret made.',
  },
} as const satisfies Record<string, ErrorEntry>;
