/** Errors of the ways a message reaches somebody. No secret and no address of anybody stands in them. */
import type { ErrorEntry } from './entry.ts';

export const channelErrors = {
  CHANNEL_SECRET_UNUSABLE: {
    happened: 'The file of a secret, {path}, is not usable: {reason}.',
    fix: 'Let the agent’s own account alone read it (mode 0600), with nothing but the secret in it.',
  },
  CHANNEL_SECRET_MISSING: {
    happened: 'Nobody gave the secret of {what}.',
    fix: 'Put it into {path} (mode 0600) or into the environment as {variable}.',
  },
  CHANNEL_WEBHOOK_SECRET_WRONG: {
    happened: 'The secret of the webhook "{name}" is none that signs.',
    fix: 'Write whsec_ and 24 to 64 bytes in base64; two with a space between while it is changed, the newer first. Without a file the agent makes one.',
  },
  PUSH_SUBSCRIPTION_WRONG: {
    happened: 'What this browser says of itself takes no push: {reason}.',
    fix: 'Switch push off and on again on this phone; if that does not help, use another browser.',
  },
  PUSH_DEVICES_FULL: {
    happened: 'There are {max} phones that take push, and no more are kept.',
    fix: 'Switch push off on phones that nobody uses any more.',
  },
  PUSH_DEVICE_UNKNOWN: {
    happened: 'Push was not on for you on this phone.',
    fix: 'Nothing needs doing; switch it on to be called here.',
  },
} as const satisfies Record<string, ErrorEntry>;
