/** Words of ISA-18.2 / IEC 62682. */
export type AlarmState =
  | 'normal'
  | 'unacknowledged'
  | 'acknowledged'
  | 'returned-unacknowledged'
  | 'latched-unacknowledged'
  | 'latched-acknowledged'
  | 'shelved'
  | 'suppressed-by-design'
  | 'out-of-service';

export type Transition =
  | 'raised'
  | 'returned'
  | 'acknowledged'
  | 'reset'
  | 'realarmed'
  | 'shelved'
  | 'unshelved'
  | 'suppressed'
  | 'released'
  | 'removed-from-service'
  | 'returned-to-service'
  | 'removed';
