/** docs/site-fields.md: every field of a site file and of a material sheet, from their schemas. */
import { z } from 'zod/mini';
import { sheetWritten } from '#rules/material/sheet.ts';
import { markPayloadWritten, markWritten } from '#rules/site/mark-schema.ts';
import { ruleFields } from '#rules/site/rule-schema.ts';
import { siteWritten, stationWritten } from '#rules/site/schema.ts';
import { sensorWritten } from '#rules/site/sensor-schema.ts';
import { derivedWritten, payloadWritten, signalWritten } from '#rules/site/signal-schema.ts';
import { tellingWritten } from '#rules/site/telling-schema.ts';
import { blockSections, schemaTable } from './schema-table.ts';

const payloadSections = (): string =>
  payloadWritten.def.options
    .map((option) => {
      const { kind } = option.def.shape;
      return `### Payload ${kind.def.values[0]}\n\n${schemaTable(option)}`;
    })
    .join('\n\n');

const sensorSections = (): string =>
  sensorWritten.def.options
    .map((option) => `#### Sensor ${option.def.shape.kind.def.values[0]}\n\n${schemaTable(option)}`)
    .join('\n\n');

const markPayloads = (): string =>
  markPayloadWritten.def.options
    .map(
      (option) =>
        `### Payload ${option.def.shape.kind.def.values[0]} of a mark\n\n${schemaTable(option)}`,
    )
    .join('\n\n');

const tellingSection = (): string => `## Telling

[Telling people](telling.md) and [people](people.md) tell more.

${schemaTable(tellingWritten)}

${blockSections(tellingWritten, '###')}`;

export const siteFieldsPage = (): string => `# Fields of a site file

Every field there is. [The site file](site-file.md) tells how they go together. Made from the schemas
in \`rules/site/\` and \`rules/material/\` by \`npm run docs\`; edit them there.

A name is lower case letters, digits and single hyphens between them, 48 characters at most.

## The file

${schemaTable(siteWritten)}

## A station

${schemaTable(stationWritten)}

## A signal

${schemaTable(signalWritten)}

${payloadSections()}

### A raw sensor

[Raw sensors](sensors.md) tells more.

${sensorSections()}

## A derived signal

${schemaTable(derivedWritten)}

## A mark

What people write down that no signal tells. A station kind knows its own marks; here they get a topic,
or a mark of your own is added.

${schemaTable(markWritten)}

${markPayloads()}

${tellingSection()}

## A rule

These fields belong to every rule; the settings of its kind stand beside them
([rule kinds](kinds.md#rule-kinds)).

${schemaTable(z.strictObject(ruleFields))}

## A material sheet

A YAML file of its own, beside the site file or below it. What is absent is unknown, and a rule that
needs it says so.

${schemaTable(sheetWritten)}
`;
