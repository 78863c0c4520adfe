/** Decisions, requirements, calculations, settings, cautions and sources. */
export const tablesTemplate = `
= Decisions and concessions
#d.decided
== Decisions
#table(columns: (9mm, 1fr, 60mm),
  table.header[No.][Finding][Decision],
  ..d.groups.map(g => g.findings.map(f => (
    link(label("f" + str(f.number)), str(f.number)),
    f.title,
    [#f.decision.kind#for l in f.decision.lines [ #linebreak() #text(size: 8.5pt, fill: soft)[#l.label:] #text(size: 8.5pt, l.value)]],
  ))).flatten())
== Concessions
A concession is a nonconformity that is kept on purpose. It holds until the date it carries, and only with its control
measures.
#if d.concessions.len() == 0 [
  None has been granted.
] else {
  for c in d.concessions [
    === Finding #c.number: #c.title
    #rows((
      (label: "Reason", value: c.reason),
      (label: "Granted by", value: c.grantedBy),
      (label: "Until", value: c.until),
    ), first: 26mm)
    #table(columns: (1fr, 38mm, 38mm),
      table.header[Control measure][How often][Owner],
      ..c.measures.map(m => (m.what, m.interval, m.owner)).flatten())
  ]
}

= Requirements
#d.requirementsSummary “Met” means met as far as the stated basis goes.
#for group in d.requirements [
  == #group.element
  #table(columns: (1fr, 20mm, 62mm, 16mm),
    table.header[Requirement][Status][Basis][Findings],
    ..group.rows.map(r => (
      [#r.text #linebreak() #text(size: 8pt, fill: soft, r.source)],
      r.status,
      r.basis,
      r.findings.map(n => link(label("f" + str(n)), str(n))).join(", "),
    )).flatten())
]

= Calculations
Each number of a finding with the way it came about, so that it can be redone by hand.
#for w in d.workings [
  #heading(level: 2, text(size: 10pt)[C#w.number #w.title])
  #label("c" + str(w.number))
  #if w.inputs.len() > 0 {
    table(columns: (22mm, 1fr, 32mm, 48mm),
      table.header[Symbol][Input][Value][From],
      ..w.inputs.map(i => (i.symbol, i.name, i.value, i.from)).flatten())
  }
  #for f in w.formula [
    #block(above: 1.6mm, below: 1.6mm, inset: (left: 4mm), f)
  ]
  #for s in w.steps [
    #block(above: 1.2mm, below: 1.2mm)[#text(fill: soft)[#s.label:] #s.value]
  ]
  #block(above: 2mm)[*#w.result.label: #w.result.value*]
  #block(text(size: 8.5pt, fill: soft)[
    Source: #w.source. Validity: #w.validity. Used by #if w.usedBy.len() > 1 [findings] else [finding] #w.usedBy.map(n => link(label("f" + str(n)), str(n))).join(", ").
  ])
  #if w.warnings.len() > 0 { bullets(w.warnings) }
]

= Survey
The settings with which the model was measured. Places below them are not listed.
#rows(d.settings, first: 100mm)
== Notes
#if d.surveyNotes.len() == 0 [None.] else { bullets(d.surveyNotes) }

= Cautions
#bullets(d.cautions)

= Sources
Our wording stands in this file; the source itself decides.
#if d.sources.len() == 0 [None of the sources is in the catalogue.] else { table(columns: (1fr, 32mm, 27mm, 46mm),
  table.header[Source][Edition][Kind][What of it was seen],
  ..d.sources.map(s => (s.title, s.edition, s.kind, s.seen)).flatten()) }
`;
