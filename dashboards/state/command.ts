/** One command to the agent at a time, and what became of it. Nothing is kept to be sent later. */
import { useRef, useState } from 'preact/hooks';
import { post, Refused } from './api.ts';

/** As the agent says it: names, and whether anybody else could be told. */
export interface Asked {
  readonly people: readonly string[];
  readonly can_be_told: boolean;
}

export type CommandState =
  | { readonly kind: 'idle' }
  | { readonly kind: 'sending' }
  /** `asked`: of an alarm that was passed on. */
  | { readonly kind: 'done'; readonly asked?: Asked }
  | { readonly kind: 'refused'; readonly why: string; readonly fix: string }
  | { readonly kind: 'no-answer' };

export interface Command {
  readonly state: CommandState;
  /** Resolves true once the agent has it on disk; a second tap while one is under way does nothing. */
  readonly send: (path: string, body?: object) => Promise<boolean>;
}

export function useCommand(): Command {
  const [state, setState] = useState<CommandState>({ kind: 'idle' });
  const underWay = useRef(false);
  const send = async (path: string, body?: object): Promise<boolean> => {
    if (underWay.current) return false;
    underWay.current = true;
    setState({ kind: 'sending' });
    try {
      const { asked } = (await post<{ asked?: Asked } | null>(path, body)) ?? {};
      setState({ kind: 'done', ...(asked === undefined ? {} : { asked }) });
      return true;
    } catch (error) {
      setState(
        error instanceof Refused
          ? { kind: 'refused', why: error.problem.detail, fix: error.problem.fix }
          : { kind: 'no-answer' },
      );
      return false;
    } finally {
      underWay.current = false;
    }
  };
  return { state, send };
}
