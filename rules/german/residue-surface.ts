/** German for the texts of `rules/stations/residue-surface.ts`. */
import type { Texts } from './texts.ts';

export const residueSurface: Texts = {
  // early, approaching
  '{$signal} at {$value}, at or above {$limit}, for {$duration}: past the early limit set for dried residue.':
    '{$signal}: {$value}, seit {$duration} auf oder über {$limit}: Der für getrockneten Rückstand festgelegte Frühwarngrenzwert ist erreicht oder überschritten.',
  '{$signal} at {$value}, rising {$minuteslope} a minute; ignition limit set for dried residue, {$limit}, in {$early} to {$late}.':
    '{$signal}: {$value}, steigt um {$minuteslope} je Minute; die für getrockneten Rückstand festgelegte Zündgrenze, {$limit}, ist in {$early} bis {$late} erreicht.',
  'Dried residue can light itself with no spark, thicker residue at a lower temperature; friction or a spark lights it even cold.':
    'Getrockneter Rückstand kann sich ohne Funken selbst entzünden, dickerer schon bei niedrigerer Temperatur; Reibung oder ein Funke entzündet ihn sogar in kaltem Zustand.',
  'Smoke, glow or burning smell: leave, fire alarm, site fire plan{$plan}.':
    'Bei Rauch, Glut oder Brandgeruch: Bereich verlassen, Feueralarm auslösen, nach dem Brandschutzplan des Werks{$plan} handeln.',
  'Otherwise load no more and lower the heat at the outside control, as the oven’s instruction says; compare with the neighbouring sensors.':
    'Andernfalls: nicht mehr beladen; Heizung an der Bedienung von außen herunterregeln, wie es die Betriebsanweisung des Ofens vorgibt; mit den benachbarten Sensoren vergleichen.',
  'Tell the shift lead; watch the reading from a safe place until it has fallen for 10 min.':
    'Schichtleitung informieren; Messwert von sicherer Stelle aus beobachten, bis er 10 min lang gefallen ist.',
  'open the oven to look': 'Den Ofen nicht öffnen, um nachzusehen.',
  'reach in': 'Nicht hineingreifen.',
  'scrape, sweep or blow hot residue':
    'Heißen Rückstand nicht schaben, nicht kehren, nicht abblasen.',
  'Hot surfaces, fire. Cleaning waits until cold, with non-sparking tools, under the site’s permit.':
    'Heiße Oberflächen, Feuer. Reinigung erst in kaltem Zustand, mit funkenfreien Werkzeugen, mit Erlaubnisschein des Werks.',
  // act, act-thick
  '{$signal} at {$value}, at or above {$limit}, for {$duration}: past the limit to act set for dried residue.':
    '{$signal}: {$value}, seit {$duration} auf oder über {$limit}: Der für getrockneten Rückstand festgelegte Eingriffsgrenzwert ist erreicht oder überschritten.',
  '{$signal}: {$value} left to where residue as thick as gauged here may light itself, at or below {$limit}, for {$duration}.':
    '{$signal}: Temperatur, bei der sich Rückstand von der hier gemessenen Dicke selbst entzünden kann: noch {$value} bis dorthin, seit {$duration} auf oder unter {$limit}.',
  'Ignition is possible now; people nearby can be burned or overcome by smoke.':
    'Eine Entzündung ist jetzt möglich; Menschen in der Nähe können Verbrennungen erleiden oder im Rauch das Bewusstsein verlieren.',
  'Smoke, glow, smell or doubt: leave, fire alarm, site fire plan{$plan}.':
    'Bei Rauch, Glut, Geruch oder Zweifel: Bereich verlassen, Feueralarm auslösen, nach dem Brandschutzplan des Werks{$plan} handeln.',
  'Otherwise turn the heat off at the outside control and keep everyone away.':
    'Andernfalls Heizung an der Bedienung von außen abschalten und alle fernhalten.',
  'Call EHS; the site’s plan says what becomes of conveyor, fans and dampers.':
    'Arbeitssicherheit rufen; was mit Förderer, Ventilatoren und Klappen geschieht, sagt der Plan des Werks.',
  'stop the conveyor unless the site’s plan says so: a stopped load goes on heating':
    'Den Förderer nicht anhalten, es sei denn, der Plan des Werks sieht es vor: Eine stehende Charge heizt sich weiter auf.',
  // at-limit
  '{$signal} at {$value}, past the ignition limit set for dried residue, {$limit}, since {$clock}; a fire may have begun that this sensor cannot see.':
    '{$signal}: {$value}; Zündgrenze für getrockneten Rückstand, {$limit}, erreicht seit {$clock}; es kann schon ungesehen brennen.',
  'Fire in the oven or its exhaust; people nearby can be burned or overcome by smoke.':
    'Brand im Ofen oder in seiner Abluft; Menschen in der Nähe können Verbrennungen erleiden oder im Rauch das Bewusstsein verlieren.',
  'Leave; keep everyone away. Smoke, glow, smell or doubt: fire alarm now, site fire plan{$plan}; account for people.':
    'Weggehen, alle fernhalten. Rauch, Glut, Geruch, Zweifel: sofort Feueralarm, Brandschutzplan des Werks{$plan}; prüfen, ob alle da sind.',
  'If it is safe to reach, stop the oven at its outside control by its emergency instruction, which also governs conveyor, fans and exhaust.':
    'Wenn die Bedienung von außen gefahrlos zu erreichen ist: Ofen dort nach seiner Notfallanweisung stillsetzen; sie regelt auch Förderer, Ventilatoren und Abluft.',
  'go in': 'Nicht hineingehen.',
  'open a door or blow air at it: air feeds fire':
    'Keine Tür öffnen, keine Luft daraufblasen: Luft nährt das Feuer.',
  'fight it unless trained and the site’s plan says so':
    'Nicht löschen ohne Ausbildung oder ohne Vorgabe im Plan des Werks.',
  'take a falling number as all-clear': 'Einen fallenden Wert nicht als Entwarnung nehmen.',
  // at-limit, self-heating
  'The site’s fire plan and the fire service overrule this page. {$fumes}: safety data sheet, sections 5 and 10.':
    'Der Brandschutzplan des Werks und die Feuerwehr gehen dieser Seite vor. {$fumes}: Sicherheitsdatenblatt, Abschnitte 5 und 10.',
};
