/**
 * Words by which parts of machines are named, in the languages that builders write: English, German, French, Spanish,
 * Italian, Dutch. A name is a hint: it proposes an element and raises questions, it never makes a finding.
 */

export type Noun =
  | 'foot'
  | 'castor'
  | 'frame'
  | 'fastener'
  | 'weld'
  | 'gasket'
  | 'hinge'
  | 'door'
  | 'window'
  | 'guard'
  | 'enclosure'
  | 'control'
  | 'cable'
  | 'tie'
  | 'hose'
  | 'cylinder'
  | 'drive'
  | 'shaft'
  | 'bearing'
  | 'belt'
  | 'hopper'
  | 'tank'
  | 'pipe'
  | 'blank'
  | 'valve'
  | 'pump'
  | 'sensor'
  | 'nozzle'
  | 'dosing'
  | 'spray'
  | 'tray'
  | 'insulation'
  | 'label'
  | 'hood'
  | 'filter'
  | 'lamp'
  | 'container'
  | 'guide'
  | 'closing'
  | 'lid'
  | 'waste'
  | 'plug';

export interface NounEntry {
  readonly noun: Noun;
  /** Id of an element of the catalogue. */
  readonly element: string;
  /** Lower case. Words of five letters or more are also found inside compounds; shorter ones only as whole words. */
  readonly words: readonly string[];
}

const entry = (noun: Noun, element: string, words: string): NounEntry => ({
  noun,
  element,
  words: words.split(' ').map((w) => w.replaceAll('_', ' ')),
});

export const nouns: readonly NounEntry[] = [
  entry(
    'foot',
    'feet',
    'foot feet levelling_foot stellfuss stellfuß fuss fuß maschinenfuss pied pieds pie pata piede piedino voet stelvoet leveller leg beine bein',
  ),
  entry('castor', 'castor', 'castor caster lenkrolle bockrolle roulette rueda ruota zwenkwiel'),
  entry(
    'frame',
    'frame',
    'frame rahmen gestell chassis bati bâti bastidor telaio beam traverse träger traeger upright post crossbar cross_member strut rail bar stütze stuetze pfosten poutre montant viga travesaño trave montante longeron profile profil profilé shelf konsole console base_plate deck ligger staander',
  ),
  entry(
    'fastener',
    'fastener',
    'bolt screw nut washer schraube mutter scheibe_din unterlegscheibe sechskant hexagon hex vis ecrou écrou rondelle boulon tornillo tuerca arandela vite dado rondella bout schroef moer stud gewindestange threaded_rod rivet niet rivet remache rivetto iso4014 iso4017 iso4762 iso4032 din912 din931 din933 din934',
  ),
  entry(
    'gasket',
    'gasket',
    'gasket seal o-ring oring dichtung dichtring joint_torique joint junta guarnizione pakking afdichting',
  ),
  entry('hinge', 'door', 'hinge scharnier charniere charnière bisagra cerniera'),
  entry('door', 'door', 'door tür tuer klappe porte puerta porta deur flap hatch'),
  entry('window', 'window', 'window pane visor sichtscheibe fenster vitre hublot ventana finestra venster'),
  entry(
    'guard',
    'guard',
    'guard shield schutzgitter schutzhaube protecteur carter resguardo riparo afscherming fence',
  ),
  entry(
    'enclosure',
    'enclosure',
    'cabinet enclosure schaltschrank schrank gehäuse gehaeuse armoire coffret armario quadro behuizing schakelkast terminal_box klemmkasten panel verkleidung abdeckblech',
  ),
  entry(
    'control',
    'control',
    'button display screen touch emergency_stop not-halt nothalt not-aus taster bildschirm bouton ecran écran arret pulsador pantalla pulsante schermo knop scherm bedienfeld keypad lamp_indicator',
  ),
  entry(
    'cable',
    'cable',
    'cable kabel leitung conduit câble fil cavo gland verschraubung cable_tray kabelkanal kabelrinne wire presse-etoupe trunking',
  ),
  entry('tie', 'cable', 'cable_tie tie kabelbinder serre-cable serre-cables fascetta bundelband'),
  entry('hose', 'hose', 'hose schlauch tuyau_flexible flexible manguera tubo_flessibile slang'),
  entry(
    'cylinder',
    'pneumatic',
    'cylinder_pneumatic pneumatic pneumatik verin vérin druckluftzylinder air_cylinder cilindro_neumatico cilindro_pneumatico silencer',
  ),
  entry(
    'drive',
    'drive',
    'motor gearbox gearmotor getriebe antrieb moteur reducteur réducteur reductor riduttore motore aandrijving actuator servo coupling kupplung',
  ),
  entry('shaft', 'shaft', 'shaft welle arbre eje albero spindle spindel'),
  entry(
    'bearing',
    'bearing',
    'bearing lager palier roulement rodamiento cuscinetto bushing buchse linear_rail linearführung',
  ),
  entry(
    'belt',
    'belt',
    'belt conveyor förderband foerderband förderer gurt bande convoyeur cinta transportador nastro trasportatore band chain kette roller umlenkrolle rolle_band drum sprocket',
  ),
  entry('hopper', 'hopper', 'hopper trichter tremie trémie tolva tramoggia vultrechter'),
  entry(
    'tank',
    'tank',
    'tank vessel kessel behälter behaelter cuve reservoir depósito deposito serbatoio ketel agitator rührer ruehrer',
  ),
  entry(
    'pipe',
    'pipe',
    'pipe rohrleitung rohrbogen tee bend elbow union reducer ferrule clamp_union tuyau tuyauterie tubería tuberia tubazione leiding bogen manifold riser',
  ),
  entry(
    'blank',
    'pipe',
    'blind_cap blank_cap blind_flange end_plate blindkappe blinddeckel blindflansch bouchon_plein tapon_ciego tappo_cieco blindkap',
  ),
  entry('valve', 'valve', 'valve ventil vanne valvola válvula valvula klep cock hahn'),
  entry('pump', 'pump', 'pump pumpe impeller rotor pompe bomba pompa pomp'),
  entry(
    'sensor',
    'sensor',
    'sensor fühler fuehler capteur sonde sonda sensore probe thermometer initiator lichtschranke photocell',
  ),
  entry('nozzle', 'nozzle', 'nozzle düse duese buse boquilla ugello spuitmond filling_head füllkopf filler'),
  entry('dosing', 'nozzle', 'dosing dosier doseur dosificador dosatore piston kolben'),
  entry('spray', 'spray', 'spray sprühkopf spruehkopf spray_ball sprühkugel boule_de_lavage'),
  entry(
    'tray',
    'tray',
    'tray drip_tray drain_tray drain wanne tropfwanne tropfschale abtropf ablauf bac égouttoir bandeja desague vaschetta vasca lekbak afvoer gutter rinne collar',
  ),
  entry(
    'insulation',
    'insulation',
    'insulation isolierung dämmung isolation calorifuge aislamiento isolamento cladding',
  ),
  entry(
    'label',
    'label',
    'label nameplate rating_plate typenschild schild plaque etiqueta etichetta targhetta sticker',
  ),
  entry('hood', 'hood', 'hood haube hotte campana cappa plenum laminar air_unit'),
  entry(
    'filter',
    'hood',
    'filter filter_frame filter_housing fan_housing hepa filtre filtro schwebstofffilter diffuser fan ventilator lüfter ventilateur',
  ),
  entry('lamp', 'hood', 'lamp leuchte luminaire lampe lampara lampada lamp_bar lamp_lens camera'),
  entry(
    'container',
    'container',
    'jar bottle cup bowl pot flasche becher schale bouteille bocal gobelet botella frasco vaso bottiglia barattolo bicchiere fles beker beaker glass_jar einmachglas tub can dose',
  ),
  entry(
    'guide',
    'container',
    'guide guide_rail guide_bar guide_plate führung fuehrung guidage guia guía guida geleider star_wheel',
  ),
  entry(
    'closing',
    'closing',
    'capper lid_press closer verschliesser verschließer capsuleuse tapadora tappatrice magazine stempel press',
  ),
  entry('lid', 'closing', 'lid deckel couvercle capsule tapa tapón coperchio deksel'),
  entry('waste', 'waste', 'waste reject ausschuss dechet déchet rechazo scarto afval bin'),
  entry('plug', 'hollow', 'end_cap push-in plug endkappe stopfen bouchon tapon tappo dop'),
];
