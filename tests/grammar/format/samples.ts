/**
 * The samples with which the language was designed: a machine, a procedure and rules, as they were written down
 * first and as the layout has them. The laid-out form was read through by hand against the rules in
 * grammar/format/format.ts.
 */
import { SAMPLE_MACHINE, SAMPLE_PROCEDURE, SAMPLE_RULES } from '../../support/dowel-samples.ts';

export interface Sample {
  name: string;
  typed: string;
  laidOut: string;
}

export const samples: readonly Sample[] = [
  {
    name: 'machine',
    typed: SAMPLE_MACHINE,
    laidOut: `machine tarnbrook-t40 "Tarnbrook T40 workshop compressor" {
  variant supply: single-phase, three-phase

  fluid pump-oil "compressor oil, ISO VG 100"

  system air "compressed air"
    pressure 10 bar
    temperature 140 °C
    relieved at drain-cock
    proved with receiver-gauge

  system mains "mains supply"
    live 400 V
    isolated at disconnector
    proved with two-pole-tester

  system sump "crankcase oil"
    holds 1.2 L pump-oil
    drained at sump-plug
    filled at filler-cap

  isolator disconnector "wall disconnector" in mains
  part crankcase "crankcase" fixed
  part crankshaft "crankshaft" on crankcase  fixed
  part capacitor-box "capacitor box" on motor  held by box-screws  only supply is single-phase
  part belt-guard "belt guard" on base  held by guard-screws  hazard moving
  part flywheel "flywheel"
    on crankshaft
    under belt-guard, drive-belt
    mass 19 kg
    held by flywheel-bolt

  part cylinder-head "cylinder head"
    on valve-plate
    under air-cleaner
    joined by discharge-pipe
    opens air
    mass 7 kg
    held by head-bolts
    sealed by head-gasket

  part valve-plate "valve plate"
    on cylinder
    sealed by plate-gasket
    goes "dowel hole to the belt side"
  seal head-gasket "head gasket" single-use  goes "tab outwards"
  seal plate-gasket "valve-plate gasket" single-use
  face plate-face "faces of the valve plate" under head-gasket, plate-gasket

  fastener head-bolts "head bolts" x6
    clamps cylinder-head, valve-plate to cylinder
    thread M8x1.25
    class 8.8
    layout 2 rows of 3
    order from the middle
    plan { 8 N·m; 16 N·m; 25 N·m }

  fastener flywheel-bolt "flywheel bolt" x1
    thread M16x1.5
    class 10.9
    single-use
    plan { 60 N·m; 60° } to yield

  connection discharge-pipe "discharge pipe" joins cylinder-head to receiver  opens air

  coupled crankshaft, flywheel, motor while drive-belt fitted
  tool holding-strap "flywheel holding strap" locks flywheel

  rule turn-first "Turn by hand first: a valve plate the wrong way round hits the piston." {
    after fit valve-plate  require turn flywheel 2 turns
  }
}
`,
  },
  {
    name: 'procedure',
    typed: SAMPLE_PROCEDURE,
    laidOut: `use "tarnbrook-t40.dowel"

procedure valve-plate "Renew the valve plate"
  for tarnbrook-t40
  document "T40-02-07" issue 3 "2026-11-02"
  people 1  skill "technician"  time 1 h 30 min
  wear eye-protection, gloves
  tools torque-wrench, two-pole-tester, oil-tray
{
  task make-safe "Make safe" {
    isolate mains
    lock out disconnector with padlock
    prove mains safe with two-pole-tester
    warning pressure
      "Air at 10 bar throws parts and grit. Open the cock slowly and stand to one side."
    open drain-cock
    prove air safe with receiver-gauge "The needle stands on zero and stays there."
    let cool cylinder-head
  }

  task strip "Take the head off" {
    when supply is single-phase { unbolt capacitor-box }
    remove air-cleaner
    disconnect discharge-pipe
    loosen head-bolts in reverse order "Half a turn at a time, so that the head stays flat."
    remove head-bolts
    remove cylinder-head
    remove head-gasket and discard
    remove valve-plate and discard
    remove plate-gasket and discard
  }

  task inspect "Clean and measure" {
    clean plate-face, cylinder-face
    measure warp of cylinder-face {
      up to 0.04 mm { }
      over 0.04 mm { send cylinder for "facing" }
    }
  }

  task rebuild "Rebuild" {
    fit new plate-gasket, valve-plate
    fit new head-gasket
    refit cylinder-head
    fit head-bolts by hand
    tighten head-bolts
    reverse strip except head-bolts, cylinder-head, head-gasket, valve-plate, plate-gasket
    close drain-cock
    turn flywheel 2 turns by hand
    unlock disconnector
    restore mains
  }

  task prove "Prove the job" {
    run "Let the compressor fill the receiver and cut out."
    inspect cylinder-head for "leaks, with soapy water"
  }
}
`,
  },
  {
    name: 'rules',
    typed: SAMPLE_RULES,
    laidOut: `rule strap-first "The flywheel bolt is only undone with the flywheel held." {
  before loosen flywheel-bolt  require holding-strap fitted
}
rule no-turning-on-the-strap "Turning against the strap tears it." {
  while holding-strap fitted  never turn flywheel
}
rule seat-then-check "Wheel nuts settle: go round twice." {
  after fit wheel  require tighten wheel-nuts 2 times
}
rule pressure-proof "Nothing under pressure is opened unproved." {
  before open any connection of any system with pressure  require that system proved safe
}
`,
  },
];
