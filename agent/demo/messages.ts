/**
 * Who publishes what on the demo line. docs/examples/demo-works binds every topic.
 */
import { heat } from './heat-messages.ts';
import type { Draft } from './message.ts';
import { people } from './people.ts';
import { spray } from './spray-messages.ts';
import { wet } from './wet-messages.ts';

export const gateways = ['gateway-wet', 'gateway-spray', 'gateway-heat', 'tablet'] as const;
export type Gateway = (typeof gateways)[number];

export interface Message extends Draft {
  readonly gateway: Gateway;
}

/** Every topic begins with the line. */
const line = 'bushings-1';

/** What each gateway may publish; the tablet is the people's, who write down at every station. */
export const filtersOf: Readonly<Record<Gateway, readonly string[]>> = {
  'gateway-wet': ['store-1', 'mixer-1', 'prep-1', 'tank-1'].map(under),
  'gateway-spray': ['booth-1', 'air-1'].map(under),
  'gateway-heat': ['prebake-1', 'oven-1', 'residue-1', 'racks-1', 'press-1'].map(under),
  tablet: [`${line}/+/said/+`, `${line}/+/read/+`],
};

function under(station: string): string {
  return `${line}/${station}/#`;
}

const from = (gateway: Gateway, said: readonly Draft[]): readonly Message[] =>
  said.map((message) => ({ ...message, gateway, topic: `${line}/${message.topic}` }));

export const messages: readonly Message[] = [
  ...from('gateway-wet', wet),
  ...from('gateway-spray', spray),
  ...from('gateway-heat', heat),
  ...from('tablet', people),
];
