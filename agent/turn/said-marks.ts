/** Marks that a message says, on their way to the engine, or to what is told as refused. */
import type { MarkCommand } from '#rules/input.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import { type CommandQueue, type Unjudged, untimedWords } from './commands.ts';
import type { TurnIntake } from './ports.ts';

export interface MarksMessage {
  readonly topic: string;
  readonly data: Uint8Array;
  /** Who sent it; empty where that is not known. */
  readonly from: string;
}

interface Sent extends MarksMessage {
  readonly retain: boolean;
  readonly qos: number;
}

/**
 * `judged`: null where, by the samples' clock, there is no time yet at which anything could have
 * been said. True where it says marks: then `done` is called once all they caused is on disk (at QoS
 * 0 whoever calls has done so).
 */
export function passMarks(
  message: Sent,
  intake: TurnIntake,
  commands: CommandQueue,
  judged: EpochMs | null,
  done: () => void,
): boolean {
  const marks = intake.marks(message.topic, message.data, message.retain);
  const refused = (mark: Unjudged<MarkCommand>, why: string): void =>
    intake.markRefused(mark, message, why);
  if (judged === null) for (const mark of marks) refused(mark, untimedWords);
  if (marks.length === 0 || judged === null) return false;
  commands.pass(marks, judged, message.qos === 0 ? null : done, refused);
  return true;
}
