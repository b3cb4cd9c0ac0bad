/** Why an alarm ends although the process may not have changed. */
export const endedBy = {
  changed: 'its rule was changed by the site file since it was raised; by the new terms it is over',
  removed: 'its rule was removed by the site file, or is no longer armed by it',
  gate: 'it is not judged any more: the plant left the state in which its rule judges; what it found may still hold',
} as const;
