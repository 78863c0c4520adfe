/** Decisions and requirements. */
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
    #rows(c.facts, first: 32mm)
    #table(columns: (1fr, 38mm, 38mm),
      table.header[Control measure][How often][Owner],
      ..c.measures.map(m => (m.what, m.interval, m.owner)).flatten())
  ]
}

= Requirements
#d.requirementsSummary “Met” means met as far as the stated basis goes.
#table(columns: (1fr, 30mm),
  table.header[How it was settled][Requirements],
  ..d.coverage.map(r => (r.label, r.value)).flatten())
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
`;
