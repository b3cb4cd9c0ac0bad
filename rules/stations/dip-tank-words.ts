/** Words that several texts of the dip tank share. */
export const movingRacks =
  'Wet floor and moving racks. Keep clear of the hoist; samples and panels from outside the guard.';

export const wear = `Wear what the material’s data sheet asks for. ${movingRacks}`;

/** Before anybody works over the tank. */
export const endTheCycle =
  'Let the rack in the tank come out at the end of its cycle and send no other; a loaded conveyor is not stopped inside an oven for this.';
