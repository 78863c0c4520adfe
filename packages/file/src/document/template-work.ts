/** What people do: the round at the machine, cleaning with its sheets, samples. */
export const workTemplate = `
= Round
#d.round.summary
#for stop in d.round.stops [
  == #stop.title
  #table(columns: (1fr, 62mm, 32mm),
    table.header[Asked][Found][By],
    ..stop.rows.map(r => (r.question, r.found, r.who)).flatten())
]
#if d.round.open.len() > 0 [
  == Not looked at
  #rows(d.round.open, first: 90mm)
]

= Cleaning
Groups, steps and amounts support a decision. The safety data sheet, the label, the local code and a competent person
decide; a trial on the machine shows whether it cleans.
#if d.cleaning.takes.len() > 0 [
  == What it takes
  #table(columns: (1fr, 40mm, 22mm),
    table.header[Of all groups][Value][Working],
    ..d.cleaning.takes.map(t => (t.label, t.value, link(label("c" + str(t.working)))[C#t.working])).flatten())
]
#if d.cleaning.uncleaned != "" [#block(above: 2mm)[*#d.cleaning.uncleaned.*]]
#if d.cleaning.notCounted.len() > 0 [
  === Not counted
  #bullets(d.cleaning.notCounted)
]
#for sheet in d.cleaning.sheets [
  #pagebreak(weak: true)
  == #sheet.title
  #sheet.facts
  #grid(columns: (78mm, 1fr), column-gutter: 6mm,
    image(sheet.picture.file, alt: sheet.picture.alt, width: 100%),
    [
      #block(below: 2mm, text(size: 8.5pt, fill: soft, weight: 600)[What can hurt])
      #for h in sheet.hazards [#block(above: 1.2mm, below: 1.2mm, text(size: 8.5pt)[*#h.label:* #h.value])]
      #text(size: 8.5pt)[Wear what the safety data sheet asks for. Lock out energy before hands go in.]
    ])
  #text(size: 8.5pt, fill: soft)[#sheet.picture.caption: #sheet.parts]
  #if sheet.steps.len() == 0 [No steps are set.] else {
    table(columns: (7mm, 1fr, 30mm, 16mm, 16mm, 12mm),
      table.header[][Step][Strength][Heat][Time][Done],
      ..sheet.steps.map(s => (s.number, [*#s.what* #linebreak() #text(size: 8.5pt, s.how)], s.strength, s.heat, s.time, box(width: 4mm, height: 4mm, stroke: 0.6pt + ink))).flatten())
  }
  #block(above: 3mm)[Cleaned by #box(width: 42mm, line(length: 100%, stroke: 0.4pt + soft)) #h(4mm) Checked by #box(width: 42mm, line(length: 100%, stroke: 0.4pt + soft)) #h(4mm) Date #box(width: 24mm, line(length: 100%, stroke: 0.4pt + soft))]
  #if sheet.breaches.len() > 0 [
    === Against the rules
    #bullets(sheet.breaches)
  ]
  #if sheet.materials.len() > 0 [
    === Materials to be looked at
    #table(columns: (38mm, 32mm, 20mm, 22mm, 1fr),
      table.header[Material][Medium][Verdict][Contact][Why],
      ..sheet.materials.map(m => (m.material, m.medium, m.verdict, m.contact, m.why)).flatten())
  ]
]

= Samples
Taken where cleaning is hardest. A limit says on whose authority it stands; only a trial on the machine proves cleaning.
#if d.proof.validation.len() > 0 [
  #for v in d.proof.validation [#block[#v.label: *#v.value* without a positive show that fewer than a tenth are positive (#link(label("c" + str(v.working)))[C#v.working]).]]
]
#if d.proof.points.len() == 0 [No finding in the food or splash area has a place to sample.] else {
  table(columns: (8mm, 60mm, 1fr, 24mm),
    table.header[No.][Point][Tests][Routine],
    ..d.proof.points.map(p => (
      str(p.number),
      [#p.name #linebreak() #text(size: 8.5pt, fill: soft)[#link(label("f" + str(p.finding)))[finding #p.finding]]],
      [#for t in p.tests [#block(above: 1mm, below: 1mm, text(size: 8.5pt, t))]],
      p.every,
    )).flatten())
}
#for s in d.proof.stages [#block(above: 2mm)[*#s.label.* #s.value]]
`;
