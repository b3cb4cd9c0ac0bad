/** A site file with as many kinds of fault as there are, and where each should be told. */

/** Under each line at fault stands `#!` with the column and the path of each of its faults. */
const marked = `site: Demo Works
#! 7 site
timezone: Europe/Dubln
#! 11 timezone
colour: red
#! 1 colour
materials:
  adhesive-a: materials/none.yaml
#! 15 materials.adhesive-a
  outside: ../elsewhere.yaml
#! 12 materials.outside
lines:
  mounts-2:
    store-1:
      kind: adhesive-store
      material: adhesive-b
#! 17 lines.mounts-2.store-1.material
      signals:
        wall:
          topic: mounts-2/store-1/wall
          payload: { kind: json, valeu: /v, time: t }
#! 11 lines.mounts-2.store-1.signals.wall.payload.value
#! 34 lines.mounts-2.store-1.signals.wall.payload.valeu
#! 51 lines.mounts-2.store-1.signals.wall.payload.time
          unit: Cel
          resolution: 0.5
#! 23 lines.mounts-2.store-1.signals.wall.resolution
          expect_every: 60
#! 25 lines.mounts-2.store-1.signals.wall.expect_every
        air:
          topic: mounts-2/#
#! 18 lines.mounts-2.store-1.signals.air.topic
          payload: { kind: xml }
#! 28 lines.mounts-2.store-1.signals.air.payload.kind
          unit: bar
#! 17 lines.mounts-2.store-1.signals.air.unit
        bottom:
#! 9 lines.mounts-2.store-1.signals.bottom.topic
          payload: { kind: plain }
          unit: Celsius
#! 17 lines.mounts-2.store-1.signals.bottom.unit
          range: [50 Cel, 10 Cel]
#! 11 lines.mounts-2.store-1.signals.bottom.range
      rules:
        cold-adhesiv: { low: 7 Cel }
#! 9 lines.mounts-2.store-1.rules.cold-adhesiv
        warm-store: { high: 30 Cel, high_high: 20 Cel }
#! 9 lines.mounts-2.store-1.rules.warm-store
        freeze-suspected: { off: true }
#! 34 lines.mounts-2.store-1.rules.freeze-suspected.off
        cold-adhesive: { low: 7 }
#! 31 lines.mounts-2.store-1.rules.cold-adhesive.low
        freeze-approaching: { low: 2 bar, withn: 2 h }
#! 43 lines.mounts-2.store-1.rules.freeze-approaching.withn
      derived:
        dp: { kind: dew-pont, inputs: { temperature: air, humidity: rh } }
#! 21 lines.mounts-2.store-1.derived.dp.kind
#! 69 lines.mounts-2.store-1.derived.dp.inputs.humidity
    mixer:
      kind: drum-mixr
#! 13 lines.mounts-2.mixer.kind
    Air:
#! 5 lines.mounts-2.Air
      kind: custom
    bench:
      kind: custom
      signals:
        t: { topic: "bench/+/t", payload: { kind: plain }, unit: Cel }
#! 21 lines.mounts-2.bench.signals.t.topic
        u: { topic: "bench/u", payload: { kind: plain }, unit: "%", max_rate: { change: -5 %, per: 0 s } }
#! 69 lines.mounts-2.bench.signals.u.max_rate
      rules:
        warm: { kind: bnd, signal: tt, high: 30 Cel, priority: urgent }
#! 23 lines.mounts-2.bench.rules.warm.kind
#! 36 lines.mounts-2.bench.rules.warm.signal
#! 64 lines.mounts-2.bench.rules.warm.priority
#! 9 lines.mounts-2.bench.rules.warm.consequence
#! 9 lines.mounts-2.bench.rules.warm.actions
        hot: { kind: band, signal: t, high: 30 bar, priority: low, consequence: "{$foo}", actions: [x] }
#! 45 lines.mounts-2.bench.rules.hot.high
#! 81 lines.mounts-2.bench.rules.hot.consequence
        lost-tt: { after: 5 min }
#! 9 lines.mounts-2.bench.rules.lost-tt
        stuck-u: { tolerance: 1 % }
#! 9 lines.mounts-2.bench.rules.stuck-u.for
`;
export const broken: string[] = [];
export const expected: string[] = [];
for (const line of marked.split('\n')) {
  const [, column, path] = /^#! (\d+) (\S+)$/.exec(line) ?? [];
  if (path === undefined) broken.push(line);
  else expected.push(`${broken.length}:${column} ${path}`);
}
