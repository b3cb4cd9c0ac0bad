/** Names of a site, lines, stations, signals and rules: what may stand in `line/station/signal`. */
import { z } from 'zod/mini';

export const namePattern = /^[a-z0-9]+(-[a-z0-9]+)*$/;
export const nameLengthMax = 48;

/** True where `text` may be a name: lower case, digits, single hyphens between them. */
export const isName = (text: string): boolean =>
  text.length <= nameLengthMax && namePattern.test(text);

export const nameText = z
  .string()
  .check(
    z.regex(namePattern, 'use lower case letters, digits and single hyphens, as "oven-1"'),
    z.maxLength(nameLengthMax),
    z.meta({ description: 'Lower case letters, digits and single hyphens: oven-1.' }),
  );
