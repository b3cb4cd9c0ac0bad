/** My phone: push on, off and tried, part of the one catalogue. */
export const phone = {
  myPhone: 'My phone',
  phoneSays:
    'With push on, alarms come to this phone while the page is closed and the phone locked.',
  phoneReading: 'Looking whether push is on here.',
  phoneState: {
    on: 'Push is on for this phone.',
    off: 'Push is off for this phone.',
    blocked:
      'This phone does not let the page send notifications. Allow them for this page in the settings of the browser, then come back here.',
    install:
      'On this phone push works once the page is on the home screen: share, "Add to Home Screen", then open it from there.',
    insecure:
      'Push needs the page by https, or on the machine itself. Ask who runs the agent for its https address.',
    unsupported: 'This browser takes no push. Use another one, or be told by e-mail.',
    worker:
      'The part that receives messages did not start in this browser. Load the page anew; where that does not help, its certificate may not be trusted on this phone.',
  },
  phoneUnread:
    'The agent did not answer, so nothing is known of push. Try again when the link is back.',
  whoIsTold: 'Who would be told',
  whoIsToldSays:
    'Of an alarm of high priority, as of {$clock}. Who has not answered in time is not waited for: the next is told.',
  whoIsToldNobody: 'Nobody would be told.',
  whoIsToldNoWay: 'no way to be told',
  whoAlso: 'Programs are told too: {$names}.',
  phoneOn: 'Push on',
  phoneOff: 'Push off',
  phoneTest: 'Send me a test message',
  phoneTestWhat:
    'Close the page and lock the phone first if you want to see how an alarm would come.',
  phoneDevices:
    '.match $n one {{One phone or browser of yours takes push.}} * {{{$n} phones or browsers of yours take push.}}',
  phoneFailed: 'It did not work: {$why}',
  phoneNoAnswer: 'The agent did not answer. Push is as it was.',
  phoneRefused: 'The push service of this browser gave no address; is the phone in the network?',
  testOutcome: {
    delivered:
      'Sent. It shows within seconds; if it does not, look at the notification settings of the phone and at its power saving.',
    later: 'Not sent now.',
    gone: 'No phone of yours takes push any more. Switch it on again.',
    refused: 'Not sent.',
  },
} as const;
