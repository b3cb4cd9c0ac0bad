/** What can happen at a spray booth, and what only a person can watch. */
import { heldUsed } from './held-use.ts';
import type { Hazard } from './station.ts';

const watched = (id: string, words: string, people = false): Hazard => ({
  id,
  words,
  people,
  byHand: null,
});

export const sprayBoothHazards: readonly Hazard[] = [
  watched(
    'airflow',
    'The exhaust weakens or fails while somebody sprays: vapour and overspray are breathed, and gather.',
    true,
  ),
  watched('vessel', 'The pressure pot goes over its rating, and its relief valve sticks.', true),
  watched('filters', 'Loaded filters blow back; missing ones let overspray into duct and fan.'),
  watched('feed', 'The pot’s pressure moves, and the film with it.'),
  watched('settling', 'Solids settle in a pot that is not stirred.'),
  watched('bubbles', 'The dip tube draws air; bubbles come into the film.'),
  watched('pattern', 'The atomising air moves: spits and runs, or dry spray.'),
  watched('preheat', 'Metal comes too cold or too hot to the gun: runs, flash rust, dry spray.'),
  watched('film', 'The film is too thin and starves, or too thick and splits.'),
  watched('dry-gun', 'Material dries in a gun that was not flushed: plugs and lumps.'),
  watched('first-parts', 'The first parts after a flush or a change of container are thin.'),
  watched('worn-gun', 'A worn needle, nozzle or cap lets the pattern drift.'),
  watched('climate', 'Heat or damp of the booth’s air moves the film.'),
  heldUsed,
  {
    id: 'classified-area',
    words:
      'A sensor, radio or tool that is not certified for it lights vapour in booth, pot or mix room.',
    people: true,
    byHand:
      'before any work or sensor ask how the area is classified, whether solvent or electrostatic guns are used here, and who may drill booth, pot or duct',
  },
  {
    id: 'overspray',
    words:
      'Dried overspray in booth, filters and ducts lights itself, or two materials that must not meet do.',
    people: true,
    byHand:
      'watch surfaces, bin and cleaning by the station residue; never spray a material that can light with the one before until booth and ducts are free of it',
  },
];
