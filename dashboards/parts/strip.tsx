/** The part's journey as a strip of stations, the one that is looked at marked. It wraps; nobody has to swipe. */
import type { StationPlace } from '../judge/journey.ts';
import { stationId } from '../judge/journey.ts';
import { to } from '../router.ts';
import { ownName } from '../text/names.ts';
import { say } from '../text/say.ts';

interface StripProps {
  readonly stations: readonly StationPlace[];
  readonly here: string;
}

export const Strip = ({ stations, here }: StripProps) => (
  <nav class="strip" aria-label={say('journey', { line: ownName(here.split('/')[0] ?? '') })}>
    {stations.map((station) => (
      <a
        key={stationId(station)}
        href={to('station', stationId(station))}
        aria-current={stationId(station) === here ? 'page' : undefined}
      >
        {ownName(station.station)}
      </a>
    ))}
  </nav>
);
