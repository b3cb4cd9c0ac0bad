/** What is put aside, in one compact line each: by whom, until when, what, why. */
import type { AsideView } from '../../agent/web/contract.ts';
import { to } from '../router.ts';
import { useNow } from '../state/link.ts';
import { AsideNow } from './aside-now.tsx';
import { asideLine } from './aside-words.ts';

/** Those first whose condition holds now, then by when they end. */
const inOrder = (a: AsideView, b: AsideView): number =>
  Number(b.stands) - Number(a.stands) ||
  (a.until ?? Number.POSITIVE_INFINITY) - (b.until ?? Number.POSITIVE_INFINITY) ||
  (a.rule < b.rule ? -1 : 1);

export function AsideLines({ aside }: { readonly aside: readonly AsideView[] }) {
  const now = useNow(60_000);
  if (aside.length === 0) return null;
  return (
    <ul class="plain-list aside-lines">
      {aside.toSorted(inOrder).map((each) => (
        <li key={each.rule}>
          <a href={each.occurrence === null ? to('aside') : to('alarm', each.occurrence)}>
            {asideLine(each, now)}
          </a>{' '}
          <AsideNow aside={each} /> {each.reason}
        </li>
      ))}
    </ul>
  );
}
