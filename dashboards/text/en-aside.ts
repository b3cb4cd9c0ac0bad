/** Sentences of passing on, putting aside and being told again. Part of the catalogue (en.ts). */
export const aside = {
  putAside: 'Shelved and out of service',
  putAsideNone: 'Nothing is put aside. Every alarm is told.',
  putAsideSays:
    'Nobody is told of these. They are still judged and recorded, and the hazard stays.',
  asideState: {
    shelved: 'Shelved',
    'suppressed-by-design': 'Suppressed by design',
    'out-of-service': 'Out of service',
  },
  asideSince: 'since {$clock}, {$by}',
  asidePlant: 'by the state of the plant',
  asideUnknown: 'since when is not known',
  asideUntil: 'Ends by itself {$clock}.',
  asideOnce: 'Ends by itself {$clock}, or before, as soon as it is over.',
  asideOpen: 'Stays so until somebody brings it back.',
  asidePlantEnds: 'Ends when the plant is in another state.',
  asideLine: 'Put aside by {$by} until {$clock}: {$what}.',
  asideLineOut: 'Out of service, by {$by}, until {$clock}: {$what}.',
  asideLineOpen: 'Out of service, by {$by}, until brought back: {$what}.',
  asideLinePlant: 'Nobody is told now, by the state of the plant: {$what}.',
  asideStands: 'Its condition holds now.',

  passOn: 'I cannot take it: next person',
  passOnWhat: 'It stays not answered, and the next person is asked.',
  shelveOnce: 'Only for this once: it ends as soon as the alarm is over',
  outOfServiceDo: 'Take out of service',
  outOfServiceWhat:
    'For work on the sensor or the place: bring it back when the work is done. The hazard stays, and counts as not watched.',
  outOfServiceFor: 'For',
  outOfServiceOpen: 'until it is brought back',
  outOfServiceManaged:
    'What is highly managed needs an end and a reason of ten letters or more; while it stands, EHS or an administrator takes it out.',
  backInService: 'Bring back into service',
  outOfServiceAnother: 'Take another alarm out of service',
  outOfServiceWhich: 'Which alarm',
  outOfServiceMay: 'Maintenance takes alarms out of service and brings them back.',

  nuisance: {
    chattering: 'It chatters: it came three times within a minute. No phone rings for it.',
    fleeting: 'It comes and goes within a minute. No phone rings for it unless it stays.',
  },
  toldAgain: 'Phones were told again: nothing improved in the time there is to act',
  toldLate: 'Told after all: it stayed',
  byWhom: '{$what} {$clock}, {$by}',
  byItself: '{$what} {$clock}',
  whoWasTold: 'Who was told',
  toldEach: '{$who}, by {$by}: {$what}.',
  toldWay: { push: 'phone', email: 'e-mail', webhook: 'webhook' },
  toldOutcome: {
    delivered: 'told',
    gone: 'not reached, there is no such phone or mailbox any more',
    refused: 'not taken there',
    'given-up': 'not reached, given up',
    withdrawn: 'not needed any more',
    full: 'not sent, too many messages waited',
  },
} as const;
