/** In the place of what could not be read: why, and what to do. Never as if there were nothing. */
import type { Read } from '../state/read.ts';
import { say } from '../text/say.ts';

interface NotReadProps {
  readonly read: Read<unknown>;
}

/** Nothing where the latest reading went through. */
export function ReadFailed({ read: { failed, again } }: NotReadProps) {
  if (failed === null) return null;
  return (
    <div class="outcome" role="alert">
      <p>
        <strong>{say('unread')}</strong>{' '}
        {failed.kind === 'no-answer' ? (
          say('unreadNoAnswer')
        ) : (
          <span lang="en">{say('refused', { why: failed.why, fix: failed.fix })}</span>
        )}
      </p>
      <button type="button" onClick={again}>
        {say('readAgain')}
      </button>
    </div>
  );
}

/** Also that it is still being read. */
export const NotRead = ({ read }: NotReadProps) =>
  read.found === null && read.failed === null ? (
    <p class="empty">{say('chartWait')}</p>
  ) : (
    <ReadFailed read={read} />
  );
