/**
 * German for what rules wait for in the site file or a sheet (`needs` of the stations), each without where it
 * is written: that is the words in brackets behind it, which are those of the files.
 */
import type { Texts } from './texts.ts';

export const needs: Texts = {
  // sheets: storage, mixing
  'The storage temperatures of the material’s data sheet':
    'Die Lagertemperaturen aus dem Datenblatt des Materials',
  'The day on which the frost season begins on the way here, as "10-15" (rule freight-unlogged-season: season_from), or a sensor outside':
    'Der Tag, an dem auf dem Weg hierher die Frostzeit beginnt, etwa „10-15“ (Regel freight-unlogged-season: season_from), oder ein Sensor im Freien',
  'The day on which the frost season ends on the way here, as "04-15" (rule freight-unlogged-season: season_until), or a sensor outside':
    'Der Tag, an dem auf dem Weg hierher die Frostzeit endet, etwa „04-15“ (Regel freight-unlogged-season: season_until), oder ein Sensor im Freien',
  'The shelf life from the day it was made': 'Die Haltbarkeit ab dem Tag der Herstellung',
  'How long it keeps once it was first drawn from': 'Wie lange es nach der ersten Entnahme hält',
  'How long it keeps once it was let down': 'Wie lange es verdünnt hält',
  'The longest rest the material’s data sheet allows':
    'Die längste Ruhezeit, die das Datenblatt des Materials erlaubt',
  'How long a new container is mixed before it is drawn from':
    'Wie lange ein neues Gebinde vor der ersten Entnahme gemischt wird',
  'The diameter of the blade, from its drawing':
    'Der Durchmesser des Rührblatts, aus seiner Zeichnung',
  'The diameter of the paddle, from its drawing':
    'Der Durchmesser des Rührpaddels, aus seiner Zeichnung',
  'The level at which the blade’s upper edge is 50 mm under':
    'Der Füllstand, bei dem die Oberkante des Rührblatts 50 mm unter der Oberfläche liegt',
  // coated parts
  'The longest time from the coat to the press': 'Die längste Zeit von der Schicht bis zur Presse',
  'The highest temperature at which coated parts may wait':
    'Die höchste Temperatur, bei der beschichtete Teile warten dürfen',
  'The longest time from phosphating to the coat':
    'Die längste Zeit vom Phosphatieren bis zur Schicht',
  // air
  'The gauge pressure this line needs': 'Der Überdruck, den diese Linie braucht',
  'The pressure drop at which the filter’s data sheet changes the element':
    'Der Druckabfall, bei dem das Filterelement laut Datenblatt gewechselt wird',
  'The pressure drop at which the filter’s data sheet changes it':
    'Der Druckabfall, bei dem der Filter laut Datenblatt gewechselt wird',
  'The pressure drop of clean filters with the fan running':
    'Der Druckabfall sauberer Filter bei laufendem Ventilator',
  'The exhaust’s normal pressure drop': 'Der normale Druckabfall der Abluft',
  'The least air speed that law and the booth’s maker ask for, and that this sensor’s reading was fitted to a survey of the face':
    'Die geringste Luftgeschwindigkeit, die Vorschriften und Hersteller der Spritzkabine verlangen, und dass der Messwert dieses Sensors an eine Messung über den Eintrittsquerschnitt angepasst wurde',
  // bath
  'Solids of this lot by oven': 'Der Feststoffgehalt dieses Loses, im Ofen bestimmt',
  'The uncertainty of that test': 'Die Unsicherheit dieser Prüfung',
  'Density of the same sample': 'Die Dichte derselben Probe',
  'The uncertainty of that density': 'Die Unsicherheit dieser Dichte',
  'The temperature it was read at': 'Die Temperatur, bei der sie abgelesen wurde',
  'How well this density is read': 'Wie genau diese Dichte abgelesen wird',
  'The bath’s target solids': 'Der Sollwert für den Feststoffgehalt des Bads',
  'How far solids may be off': 'Wie weit der Feststoffgehalt abweichen darf',
  'Four panels or more drawn from this tank, each with its speed and film':
    'Vier oder mehr Prüfbleche aus diesem Becken, jedes mit Ziehgeschwindigkeit und Schichtdicke',
  'The loop’s normal flow': 'Der normale Durchfluss des Kreislaufs',
  'The loop’s normal flow or strokes':
    'Der normale Durchfluss oder die normalen Hübe des Kreislaufs',
  'The pressure drop of the clean filter at normal flow':
    'Der Druckabfall des sauberen Filters bei normalem Durchfluss',
  'What one stroke of the pump moves': 'Was ein Hub der Pumpe fördert',
  'What tank and lines hold': 'Was Becken und Leitungen fassen',
  'How many parts hang on a rack': 'Wie viele Teile an einem Gestell hängen',
  'The bath’s target temperature': 'Der Sollwert für die Temperatur des Bads',
  'The fall from which this weir foams': 'Die Fallhöhe, ab der dieser Überlauf schäumt',
  'The withdrawal speed the film was set up at':
    'Die Ziehgeschwindigkeit, mit der die Schicht eingerichtet wurde',
  'The lowest pH of the bath': 'Der niedrigste pH-Wert des Bads',
  'The highest pH of the bath': 'Der höchste pH-Wert des Bads',
  'The highest conductivity of the bath': 'Die höchste Leitfähigkeit des Bads',
  'The lowest viscosity of the bath': 'Die niedrigste Viskosität des Bads',
  'The highest viscosity of the bath': 'Die höchste Viskosität des Bads',
  // film
  'The thinnest dry film': 'Die dünnste Trockenschicht',
  'The thickest dry film': 'Die dickste Trockenschicht',
  'The least dry film of one coat': 'Die dünnste Trockenschicht eines Auftrags',
  'The most dry film of one coat': 'Die dickste Trockenschicht eines Auftrags',
  'The least dry film of all coats together': 'Die dünnste Trockenschicht aller Aufträge zusammen',
  'The most dry film of all coats together': 'Die dickste Trockenschicht aller Aufträge zusammen',
  'The solids by volume': 'Der Feststoffgehalt nach Volumen',
  // ovens
  'How long these parts take to close two thirds of the distance to the air, from a trial run with thermocouples':
    'Wie lange diese Teile brauchen, um zwei Drittel des Abstands zur Luft aufzuholen, aus einer Probefahrt mit Thermoelementen',
  'The temperature its heat is counted at':
    'Die Bezugstemperatur, bei der seine Wärme gezählt wird',
  'How many kelvin make ten times the rate': 'Wie viele Kelvin die Geschwindigkeit verzehnfachen',
  'How its early cure grows with temperature':
    'Wie seine vorzeitige Vernetzung mit der Temperatur zunimmt',
  'The metal temperature at which the coat dries':
    'Die Metalltemperatur, bei der die Schicht trocknet',
  'The metal temperature at which the primer’s water leaves it':
    'Die Metalltemperatur, bei der das Wasser den Primer verlässt',
  'The least time at or above it': 'Die kürzeste Zeit bei dieser Temperatur oder darüber',
  'The longest time at or above it': 'Die längste Zeit bei dieser Temperatur oder darüber',
  'The time from entry to exit (rule under-dried: dwell), without which it is told only at the exit':
    'Die Zeit von der Einfahrt bis zur Ausfahrt (Regel under-dried: dwell); ohne sie wird es erst bei der Ausfahrt gemeldet',
  'The time from entry to exit (rule under-baked: dwell), without which it is told only at the exit':
    'Die Zeit von der Einfahrt bis zur Ausfahrt (Regel under-baked: dwell); ohne sie wird es erst bei der Ausfahrt gemeldet',
  'A metal temperature that ages the coat': 'Eine Metalltemperatur, bei der die Schicht altert',
  'The highest metal temperature the coat may see before rubber':
    'Die höchste Metalltemperatur, die die Schicht vor dem Kautschuk erreichen darf',
  'What all heat before rubber may be worth':
    'Wie viel alle Wärme vor dem Kautschuk zusammen wert sein darf',
  'The set-point of zone 1': 'Der Sollwert der Zone 1',
  'The set-point of zone 2': 'Der Sollwert der Zone 2',
  'The set-point of zone 3': 'Der Sollwert der Zone 3',
  'The least time from priming to the cover coat': 'Die kürzeste Zeit vom Primer bis zur Decklage',
  'The longest time from priming to the cover coat': 'Die längste Zeit vom Primer bis zur Decklage',
  // preparation
  'The least blast profile': 'Das geringste Rauheitsprofil nach dem Strahlen',
  'The most blast profile': 'Das größte Rauheitsprofil nach dem Strahlen',
  'The blast pressure of the run card': 'Der Strahldruck der Laufkarte',
  'The least phosphate on the metal': 'Die leichteste Phosphatschicht auf dem Metall',
  'The most phosphate on the metal': 'Die schwerste Phosphatschicht auf dem Metall',
  'The least points of the phosphate bath': 'Die niedrigste Punktzahl des Phosphatbads',
  'The most points of the phosphate bath': 'Die höchste Punktzahl des Phosphatbads',
  'The highest conductivity of the last rinse': 'Die höchste Leitfähigkeit der letzten Spüle',
  // press
  'The lowest cavity temperature at which adhesive and compound bond':
    'Die niedrigste Temperatur der Kavität, bei der Haftmittel und Kautschukmischung binden',
  'The set temperature of cavity 1': 'Die Solltemperatur von Kavität 1',
  'The set temperature of cavity 2': 'Die Solltemperatur von Kavität 2',
  'The set temperature of cavity 3': 'Die Solltemperatur von Kavität 3',
  'The set temperature of cavity 4': 'Die Solltemperatur von Kavität 4',
  'How far above its set temperature the data sheets let a cavity be':
    'Wie weit eine Kavität nach den Datenblättern über ihrer Solltemperatur liegen darf',
  'The longest time an insert may lie in the hot mould before it closes':
    'Die längste Zeit, die ein Einlegeteil in der heißen Form liegen darf, bevor sie schließt',
  'The least time of cure for this compound and part':
    'Die kürzeste Vulkanisationszeit für diese Kautschukmischung und dieses Teil',
  'The least pressure while it cures': 'Der geringste Druck während der Vulkanisation',
  // residue
  'The ignition limit that the site’s hazard review sets for this residue and its thickness':
    'Die Zündgrenze, die die Gefährdungsbeurteilung des Werks für diesen Rückstand und seine Dicke festlegt',
  'How much hotter this surface is than the air beside it when all is well':
    'Wie viel heißer diese Oberfläche als die Luft daneben ist, wenn alles in Ordnung ist',
  'The thickness at which the site cleans this place':
    'Die Dicke, bei der das Werk diese Stelle reinigt',
  'How often the site cleans this place': 'Wie oft das Werk diese Stelle reinigt',
  'How long a shift is, after which the waste bin is emptied':
    'Wie lang eine Arbeitsschicht ist, nach der der Abfallbehälter geleert wird',
  // spraying
  '90 % of the pressure on the pot’s own plate':
    '90 % des Drucks auf dem Typenschild des Druckbehälters',
  'How often law and the maker ask for a test of the pot’s relief valve':
    'Wie oft Vorschriften und Hersteller eine Prüfung des Sicherheitsventils am Druckbehälter verlangen',
  'The pot’s pressure on the run card': 'Der Druck des Druckbehälters auf der Laufkarte',
  'The level at which the end of the dip tube is 30 mm under':
    'Der Füllstand, bei dem das Ende des Steigrohrs 30 mm unter der Oberfläche liegt',
  'The atomising air on the run card': 'Die Zerstäuberluft auf der Laufkarte',
  'The coldest metal at the gun': 'Das kälteste Metall an der Spritzpistole',
  'The hottest metal at the gun': 'Das heißeste Metall an der Spritzpistole',
  'How soon after the last part guns and lines are flushed':
    'Wie bald nach dem letzten Teil Spritzpistolen und Leitungen gespült werden',
  'The longest time a gun may lie idle':
    'Die längste Zeit, die eine Spritzpistole unbenutzt liegen darf',
  'How long the needle and nozzle lasts, from the gun’s maker or your own cards, as "400 h"':
    'Wie lange Nadel und Düse halten, vom Hersteller der Spritzpistole oder von eigenen Karten, etwa „400 h“',
  'How long the air cap lasts, from the gun’s maker or your own cards, as "400 h"':
    'Wie lange die Luftkappe hält, vom Hersteller der Spritzpistole oder von eigenen Karten, etwa „400 h“',
};
