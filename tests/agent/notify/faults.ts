/** What can go wrong between a channel and its far side, each by a name of its own. */
export type Fault =
  | 'none'
  | '400'
  | '401'
  | '404'
  | '410'
  | '413'
  | '429, again in 7 s'
  | '500'
  | '503, again at a date'
  | 'a redirect'
  | 'no answer'
  | 'half an answer'
  | 'an answer without end'
  | 'the connection cut'
  | 'half-open socket'
  | 'nobody listens'
  | 'no such host'
  | 'certificate of a stranger'
  | 'no TLS there';

export const faults: readonly Fault[] = [
  'none',
  '400',
  '401',
  '404',
  '410',
  '413',
  '429, again in 7 s',
  '500',
  '503, again at a date',
  'a redirect',
  'no answer',
  'half an answer',
  'an answer without end',
  'the connection cut',
  'half-open socket',
  'nobody listens',
  'no such host',
  'certificate of a stranger',
  'no TLS there',
];
