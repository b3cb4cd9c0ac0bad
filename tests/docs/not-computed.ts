/** Formulas of the subject that no function stands for, each with why: the last part of docs/science.md. */
export interface NotComputed {
  readonly what: string;
  readonly why: string;
}

export const notComputed: readonly NotComputed[] = [
  {
    what: 'Freezing-point depression (K = i K_f m)',
    why: 'It would let an adhesive stand colder than water, and no credit is given for that: a dispersion breaks at its wall before it is solid, and its floor comes from the data sheet.',
  },
  {
    what: 'Time until a container is frozen through (latent heat)',
    why: 'It is days where the harm is done in hours; such a figure on a screen would be read as time that is left.',
  },
  {
    what: 'Semenov’s criterion (one temperature throughout, heat lost at the surface)',
    why: 'Residue conducts badly and is hottest within, which is the case that Frank-Kamenetskii’s law is for; it also needs kinetics, which nobody has before a basket test, and then the test says it better.',
  },
  {
    what: 'Classes of self-heating substances (CLP Annex I 2.11.2: cubes of 25 and 100 mm at 100, 120 and 140 °C)',
    why: 'Whoever puts a substance on the market classes it. The class stands in the safety data sheet, and says nothing of a layer in an oven.',
  },
  {
    what: 'How many spots to gauge by the area coated (in square feet, as for structures)',
    why: 'It is made for bridges and tanks. Parts are gauged by rack, place and face, as many as the panel rule of the station asks for.',
  },
  {
    what: 'One-term series for a sphere or a slab heated from outside',
    why: 'Metal parts have one temperature within a kelvin (Biot below 0.1), so the time constant holds; what has not is the drum, which has a wall and a middle of its own.',
  },
  {
    what: 'Depth of frost in a half-infinite body (error function)',
    why: 'No container is that thick: heat comes from both sides within hours. The drum is computed as the cylinder that it is.',
  },
];
