/** German for the sentences that rule kinds bring (rules/kinds/*.ts, `sentence`). */
import type { Texts } from './texts.ts';

export const kindSentences: Texts = {
  // age, sequence, too-soon
  '{$signal}: {$reached} since {$clock}, {$left} left of {$required}.':
    '{$signal}: {$reached} seit {$clock}, noch {$left} von {$required}.',
  '{$item}: {$reached} since {$clock}, {$left} left of {$required}.':
    '{$item}: {$reached} seit {$clock}, noch {$left} von {$required}.',
  '{$signal}: {$reached} since {$clock}, and no more than {$required} is allowed.':
    '{$signal}: {$reached} seit {$clock}; erlaubt sind höchstens {$required}.',
  '{$item}: {$reached} since {$clock}, and no more than {$required} is allowed.':
    '{$item}: {$reached} seit {$clock}; erlaubt sind höchstens {$required}.',
  '{$signal}: {$reached} since {$clock}, and {$required} were needed first.':
    '{$signal}: {$reached} seit {$clock}; vorher waren {$required} nötig.',
  '{$item}: {$reached} since {$clock}, and {$required} were needed first.':
    '{$item}: {$reached} seit {$clock}; vorher waren {$required} nötig.',
  '{$signal}: {$reached} since {$clock}, and what must follow within {$required} has not come.':
    '{$signal}: {$reached} seit {$clock}; was binnen {$required} folgen muss, kam nicht.',
  // approach
  '{$signal} at {$value}, falling {$slope} an hour; {$limit} in {$early} to {$late}.':
    '{$signal}: {$value}, fällt um {$slope} je Stunde; {$limit} in {$early} bis {$late}.',
  '{$signal} at {$value}, rising {$slope} an hour; {$limit} in {$early} to {$late}.':
    '{$signal}: {$value}, steigt um {$slope} je Stunde; {$limit} in {$early} bis {$late}.',
  // band, present
  '{$signal} at {$value}, below {$limit}.': '{$signal}: {$value}, unter {$limit}.',
  '{$signal} at {$value}, above {$limit}.': '{$signal}: {$value}, über {$limit}.',
  // deviation
  '{$signal} at {$value}, {$difference} below its target of {$reference}.':
    '{$signal}: {$value}, {$difference} unter dem Sollwert {$reference}.',
  '{$signal} at {$value}, {$difference} above its target of {$reference}.':
    '{$signal}: {$value}, {$difference} über dem Sollwert {$reference}.',
  // disagree, stray
  '{$signals} read apart, more than {$allowed}.':
    '{$signals}: Die Messwerte liegen um mehr als {$allowed} auseinander.',
  '{$which} at {$value} and {$other} at {$reference}, {$difference} apart although steady; {$allowed} is allowed. Go by {$which} until a third probe has told which is right.':
    '{$which}: {$value}; {$other}: {$reference}; {$difference} auseinander, obwohl beide gleichmäßig verlaufen; erlaubt: {$allowed}. Bis ein dritter Fühler zeigt, welcher stimmt, gilt: {$which}.',
  '{$signals} differ by {$difference}, more than {$allowed}.':
    '{$signals}: {$difference} auseinander, mehr als {$allowed}.',
  '{$which} at {$value}, {$difference} away from the others at {$reference}.':
    '{$which}: {$value}, {$difference} abseits der anderen mit {$reference}.',
  // drift, chart
  '{$signal} has drifted to {$value}, {$difference} below its usual {$reference}, since {$clock}.':
    '{$signal}: abgedriftet auf {$value}, {$difference} unter dem üblichen Wert {$reference}, seit {$clock}.',
  '{$signal} has drifted to {$value}, {$difference} above its usual {$reference}, since {$clock}.':
    '{$signal}: abgedriftet auf {$value}, {$difference} über dem üblichen Wert {$reference}, seit {$clock}.',
  '{$signal} at {$value} does not scatter about {$reference} as it usually does.':
    '{$signal}: {$value}, streut nicht um {$reference} wie sonst.',
  '{$signal} at {$value}, far outside its usual spread about {$reference}.':
    '{$signal}: {$value}, weit außerhalb der üblichen Streuung um {$reference}.',
  '{$signal}: 2 of the last 3 readings lie well off {$reference} on one side, the last at {$value}.':
    '{$signal}: 2 der letzten 3 Messwerte liegen deutlich abseits von {$reference} auf einer Seite, der letzte bei {$value}.',
  '{$signal}: 4 of the last 5 readings lie well off {$reference} on one side, the last at {$value}.':
    '{$signal}: 4 der letzten 5 Messwerte liegen deutlich abseits von {$reference} auf einer Seite, der letzte bei {$value}.',
  '{$signal}: the last 8 readings all lie on one side of {$reference}, the last at {$value}.':
    '{$signal}: Die letzten 8 Messwerte liegen alle auf einer Seite von {$reference}, der letzte bei {$value}.',
  '{$signal}: the last 9 readings all lie on one side of {$reference}, the last at {$value}.':
    '{$signal}: Die letzten 9 Messwerte liegen alle auf einer Seite von {$reference}, der letzte bei {$value}.',
  '{$signal}: the last 6 readings go one way, each beyond the one before, to {$value}.':
    '{$signal}: Die letzten 6 Messwerte gehen in eine Richtung, jeder weiter als der vorige, bis {$value}.',
  '{$signal}: the last 14 readings go up and down in turn, the last at {$value}.':
    '{$signal}: Die letzten 14 Messwerte gehen abwechselnd auf und ab, der letzte bei {$value}.',
  '{$signal}: the last 15 readings lie closer to {$reference} than its usual spread; is the gauge still reading?':
    '{$signal}: Die letzten 15 Messwerte liegen näher an {$reference} als üblich; misst das Messgerät noch?',
  '{$signal}: the last 8 readings keep away from {$reference} on both sides, as if from two sources.':
    '{$signal}: Die letzten 8 Messwerte meiden {$reference} nach beiden Seiten, als kämen sie aus zwei Quellen.',
  // dry, duty, exposure
  '{$signal}: {$reached} at or above {$limit}, {$required} needed, and {$left} left before exit.':
    '{$signal}: {$reached} bei {$limit} oder darüber, nötig sind {$required}, bis zur Ausfahrt bleiben {$left}.',
  '{$signal} reached {$value}; {$limit} may not be passed, or not for so long.':
    '{$signal}: erreichte {$value}; {$limit} darf nicht oder nicht so lange überschritten werden.',
  '{$signal} ran for {$reached}, and {$required} were needed.':
    '{$signal}: lief {$reached}, nötig waren {$required}.',
  '{$signal} was below {$limit} for {$reached} in all, more than {$required}.':
    '{$signal}: insgesamt {$reached} unter {$limit}, mehr als {$required}.',
  '{$signal} was above {$limit} for {$reached} in all, more than {$required}.':
    '{$signal}: insgesamt {$reached} über {$limit}, mehr als {$required}.',
  // held
  '{$item} is on hold, and in use since {$clock}. On hold by {$setter}: {$reason}.':
    '{$item}: gesperrt und seit {$clock} in Gebrauch. Gesperrt durch {$setter}: {$reason}.',
  // lost, stuck
  '{$signal}: no reading since {$clock}.': '{$signal}: kein Messwert seit {$clock}.',
  '{$signal}: no usable reading since {$clock}: {$cause}.':
    '{$signal}: kein verwendbarer Messwert seit {$clock}: {$cause}.',
  '{$signal} has stood at {$value} since {$clock}.': '{$signal}: steht seit {$clock} auf {$value}.',
  // rise, self-heat
  '{$signal} at {$value}: fell by {$difference} from {$reference} within {$per}; {$allowed} is allowed.':
    '{$signal}: {$value}, fiel um {$difference} von {$reference} binnen {$per}; erlaubt sind {$allowed}.',
  '{$signal} at {$value}, falling {$difference} in {$per}; {$allowed} is allowed.':
    '{$signal}: {$value}, fällt um {$difference} in {$per}; erlaubt sind {$allowed}.',
  '{$signal} at {$value}, rising {$difference} in {$per}; {$allowed} is allowed.':
    '{$signal}: {$value}, steigt um {$difference} in {$per}; erlaubt sind {$allowed}.',
  '{$signal} at {$value} and rising {$slope} an hour with the heat steady or off.':
    '{$signal}: {$value}, steigt um {$slope} je Stunde bei gleichbleibender oder abgeschalteter Heizung.',
};
