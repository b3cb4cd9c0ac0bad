/** What stands behind a signal, on the wire: its raw sensor, and its calibration. */
import { z } from 'zod';

export const sensorSchema = z.object({
  kind: z.enum(['thermocouple', 'pt100', 'current-loop']).describe('As in the site file.'),
  sends: z.string().describe('UCUM unit of what it sends.'),
  tolerance: z
    .number()
    .nullable()
    .describe('± what its class allows at the latest value; null where that is not known.'),
});
export type SensorView = z.infer<typeof sensorSchema>;

export const calibrationSchema = z.object({
  signal: z.string(),
  calibrated: z.string().describe('The day, by the site file.'),
  last_day: z.string().nullable().describe('The last day it holds; null where nobody said.'),
  overdue: z.boolean().describe('true: its readings are uncertain until it is calibrated.'),
});
