/** Slips with hazards: notices that are missing, late or mild, making safe and giving back, loads. */
import { type Bench, inHeaders, inMachine, inSteps, type Slip } from './slip.ts';

const BENCH: Bench = {
  subject: 'hazards',
  machine: `machine m "M" {
  part bed "bed" fixed
  part cover "cover" on bed  held by bolts
  fastener bolts "bolts" x4
  part stove "stove" on bed  hazard hot  can hurt
  part blades "blades" x2 on bed  hazard sharp, moving  can kill
  part door "door" on bed  hazard falling when moving  can damage
  part tank "tank" on bed  hazard radiation
  part plate "plate" on bed  hazard static-charge  will kill
  system air "air" pressure 8 bar  relieved at valve  hazard pressure  can kill
  control valve "valve" normally closed
  part vessel "vessel" on bed  opens air
  connection hoses "hoses" x2 joins vessel to bed  opens air
  system bath "bath" holds 2 L acid  temperature 80 °C  drained at tap  filled at neck  hazard hot, chemical
  control tap "tap" normally closed
  part neck "neck" on bed
  fluid acid "acid"  hazard chemical  can kill
  consumable glue "glue"  hazard chemical when using  can hurt
  system mains "mains" live 400 V  isolated at switch  proved with tester  hazard live
  isolator switch "main switch" normally on
  part box "box" on bed  opens mains
  part boxes "boxes" x2 on bed  opens mains, air
  tool tester "tester"
  system lines "brake lines" holds 1 L acid  pressure 5 bar  bled at nipple  hazard pressure
  control nipple "nipple" normally closed
  tool hoist "hoist"
}
`,
};

const STEPS = inSteps(BENCH, [
  'remove stove\nrefit stove',
  'notice hot "It is warm. Wear gloves."\nremove stove\nrefit stove',
  'note hot "It is warm. Wear gloves."\nremove stove\nrefit stove',
  'let cool stove\nremove stove\nrefit stove',
  'let cool stove\ncaution hot "A hot stove burns. Wear gloves."\nremove stove\nrefit stove',
  'turn blades',
  'remove blades\nrefit blades',
  'caution sharp, moving "Blades cut. Wear gloves."\nremove blades\nrefit blades',
  'remove blades #1\nwarning sharp, moving "Blades cut. Wear gloves."\nrefit blades #1',
  'clean blades\nwarning sharp, moving "Blades cut. Wear gloves."',
  'warning sharp, moving "Blades cut. Wear gloves."\nclean blades\nclean blades\nwarning sharp "Blades cut. Wear gloves."',
  'warning pressure "Pressure kills. Wear goggles."\nopen valve\nclose valve\nopen valve\nwarning pressure "Pressure kills. Wear goggles."\nclose valve',
  'move aside door\nmove back door',
  'note falling "The door drops and bends. Hold it."\nmove aside door\nmove back door',
  'clean tank',
  'notice radiation "It radiates. Stay away."\nclean tank',
  'clean plate',
  'warning static-charge "It sparks and kills. Discharge it."\nclean plate',
  'relieve air\nremove vessel\nrefit vessel',
  'remove vessel\nrefit vessel',
  'warning pressure "Pressure kills. Wear goggles."\nremove vessel\nrefit vessel',
  'disconnect hoses\nwarning pressure "Pressure kills. Let it out."\nconnect hoses',
  'disconnect hoses #1\nconnect hoses #1',
  'open valve\nwarning pressure "Pressure kills. Wear goggles."\nclose valve',
  'pressurise air to 8 bar',
  'prove air safe',
  'prove air, mains safe',
  'drain bath\nfill bath with 2 L acid',
  'open tap\nclose tap',
  'let cool bath\ndrain bath\ncaution hot "Hot acid burns. Wear gloves."\nfill bath with 2 L acid',
  'fill bath with 2 L acid',
  'coat cover with glue',
  'caution chemical "Glue irritates. Wear gloves."\ncoat cover with glue',
  'notice chemical "Glue irritates. Wear gloves."\ncoat cover with glue',
  'isolate mains\nremove box\nrefit box\nrestore mains',
  'isolate mains\nwarning live "Live parts kill. Prove the supply dead."\nremove box\nrefit box\nrestore mains',
  'remove box\nrefit box',
  'remove boxes\nrefit boxes',
  'remove boxes #2\nrefit boxes #2',
  'isolate mains\nlock out switch\nremove box\nrefit box\nunlock switch\nrestore mains',
  'isolate mains\nlock out switch\nprove mains safe with tester\nremove box\nunlock switch\nrefit box\nrestore mains',
  'isolate mains\nlock out switch\nprove mains safe with tester\nremove boxes\nunlock switch\nrefit boxes\nrestore mains',
  'lock out switch\nunlock switch',
  'open valve\nisolate mains\nlock out switch\nprove mains safe\nunlock switch\nrestore mains\nclose valve',
  'bleed lines at nipple',
  'fill lines with 1 L acid',
  'warning "It kills. Stay away."\nclean bed',
  'danger "Work slowly."\nclean bed',
  'warning live "Live parts."\nclean bed',
  'warning live "It kills."\nclean bed',
  'warning live "Wear gloves."\nclean bed',
  'caution "Hot."\nclean bed',
  'caution "Wear gloves."\nclean bed',
  'warning "Wear gloves."\nclean bed',
  'warning live "It kills. Remove the bolts."\nclean bed',
  'caution "It burns. Wear gloves. Open the valve."\nclean bed',
  'note "Remove the bolts."\nclean bed',
  'note "Remove the bolts."\nremove bolts\nrefit bolts',
  'warning lve "It kills. Stay away."\nclean bed',
  'warning electricity "It kills. Stay away."\nclean bed',
  'pressurise air to 10 bar not over 8 bar',
  'wait 10 min not over 5 min',
  'run',
]);

const SYSTEMS: Bench = {
  subject: 'several systems',
  machine: `machine m "M" {
  part bed "bed" fixed
  system circuits "circuits" live 230 V  isolated at breakers  proved with meter
  system tanks "air tanks" pressure 8 bar  relieved at cocks
  system bath "bath" holds 2 L oil  temperature 90 °C
  system heater "heater" live 690 V  pressure 3 bar  temperature 90 °C  isolated at plug  proved with meter
  fluid oil "oil"
  isolator breakers "breakers" x2 normally on
  connection plug "plug"
  control cocks "cocks" x2 normally closed
  part panels "panels" x2 on bed  opens circuits, tanks
  part hood "hood" on bed  opens heater
  part lid "lid" on bed  opens bath
  part pipe-end "pipe end" on bed  opens tanks
  tool meter "meter"
  system pumps "pump motors" live 690 V  isolated at fuses  proved with lamps, meter
  isolator fuses "fuses" normally on
  tool lamps "test lamps"
  part guards "guards" on bed  opens pumps
  part shield "shield" on bed  opens pumps
  system lights "lights" live 690 V  isolated at key  proved with lamp
  isolator key "key" normally on
  tool lamp "test lamp"
  part shades "shades" on bed  opens lights
}
`,
};

const MADE_SAFE = inSteps(SYSTEMS, [
  'remove panels\nrefit panels',
  'remove panels #1\nrefit panels #1',
  'remove hood\nrefit hood',
  'remove lid\nrefit lid',
  'remove pipe-end\nrefit pipe-end',
  'lock out breakers\nunlock breakers',
  'lock out breakers #1\nunlock breakers #1',
  'isolate circuits\nlock out breakers\nremove panels\nrefit panels\nunlock breakers\nrestore circuits',
  'isolate circuits\nlock out breakers\nprove circuits safe with meter\nrelieve tanks\nremove panels\nunlock breakers\nrefit panels\nrestore circuits',
  'relieve tanks\nisolate circuits\nlock out breakers\nunlock breakers\nrestore circuits',
  'open cocks\nisolate circuits\nlock out breakers\nunlock breakers\nrestore circuits\nclose cocks',
  'open cocks\nlock out breakers #1\nunlock breakers #1\nclose cocks',
  'prove circuits safe with meter',
  'lock out fuses\nunlock fuses',
  'isolate pumps\nlock out fuses\nprove pumps safe with lamps\nremove guards\nunlock fuses\nrefit guards\nrestore pumps',
  'isolate pumps\nlock out fuses\nprove pumps safe with lamps\nremove shield\nunlock fuses\nrefit shield\nrestore pumps',
  'isolate lights\nlock out key\nprove lights safe with lamp\nremove shades\nunlock key\nrefit shades\nrestore lights',
  'isolate lights\nlock out key\nprove lights safe with lamps\nunlock key\nrestore lights',
  'isolate heater\nprove heater safe with lamps\nrestore heater',
  'isolate pumps\nlock out fuses\nremove guards\nrefit guards\nunlock fuses\nrestore pumps',
  'prove tanks safe',
  'isolate heater\nprove heater safe with meter\nrestore heater',
  'isolate heater\nrelieve heater\ncheck meter "On a known live source."\nprove heater safe with meter\nrestore heater',
  'isolate heater\nrelieve heater\nprove heater safe with meter\ncheck meter "On a known live source."\nrestore heater',
]);

const LOADS: Bench = {
  subject: 'loads',
  machine: `machine m "M" {
  part bed "bed" fixed
  part motor "motor" on bed  mass 60 kg
  part doors "doors" on bed  mass 60 kg
  part crate "crate" on bed  mass 120 kg
  part base "base" on bed  mass 20 kg
  part load "load" on base  mass 40 kg
  part rims "rims" on bed  mass 20 kg
  part tyre "tyre" on rims  mass 40 kg
  tool hoist "hoist"
  connection earth "earth lead" joins battery to bed  first off  last on
  connection lead "live lead" joins battery to bed
  connection earths "earth leads" x2 joins cells to bed  first off  last on
  connection leads "live leads" x2 joins cells to bed
  part battery "battery" on bed
  connection straps "earth straps" joins pack to bed  first off  last on
  connection cables "live cables" joins pack to bed
  part pack "battery pack" on bed
  connection bond "earth bond" joins starter to bed  first off  last on
  connection wires "live wires" joins starter to bed
  part starter "starter" on bed
  connection bonds "earth bonds" joins lamp to bed  first off  last on
  connection wire "live wire" joins lamp to bed
  part lamp "lamp" on bed
  part cells "cells" on bed
}
`,
};

const LIFTED = inSteps(LOADS, [
  'remove motor\nrefit motor',
  'remove doors\nrefit doors',
  'remove doors with 2 people\nrefit doors with hoist',
  'remove crate\nrefit crate with 1 people',
  'remove crate with 3 people\nrefit crate with hoist',
  'remove base\nrefit base',
  'remove rims\nrefit rims',
  'disconnect lead\ndisconnect earth\nconnect earth\nconnect lead',
  'disconnect cables\ndisconnect straps\nconnect straps\nconnect cables',
  'disconnect wires\ndisconnect bond\nconnect bond\nconnect wires',
  'disconnect wire\ndisconnect bonds\nconnect bonds\nconnect wire',
  'disconnect leads\ndisconnect earths\nconnect earths\nconnect leads',
  'disconnect leads #1\ndisconnect earths #1\nconnect earths #1\nconnect leads #1',
]);

const PEOPLE = inHeaders(LOADS, [
  'procedure p "Work" for m people 1 {\nremove motor\nrefit motor\n}',
  'procedure p "Work" for m people 2 {\nremove motor\nrefit motor\nremove crate\nrefit crate\n}',
  'procedure p "Work" for m wear glovs {\nclean bed\n}',
]);

const DECLARED = inMachine(
  BENCH,
  [
    'part odd "odd part" on bed  hazard presure',
    'part odd "odd part" on bed  hazard electrical',
    'part odd "odd part" on bed  hazard hot when openning',
    'system gas "gas" pressure 9 bar  not over 8 bar',
    'system gases "gases" temperature 90 °C  not over 80 °C',
    'fastener odd "odd bolts" x2  clamps cover to bed  secured by wyre',
    'fastener odd "odd bolts" x2  clamps cover to bed  secured by glue-gun',
    'control odd "odd valve" normally opn in air',
    'control odd "odd valve" normally ajar in air',
  ],
  'clean bed',
);

const UNPROVED = inMachine(
  SYSTEMS,
  ['system odd "odd supply" live 400 V  proved with\n  part gate "gate" on bed  opens odd'],
  'isolate odd\nremove gate\nrefit gate\nrestore odd',
);

export const HAZARD_SLIPS: readonly Slip[] = [
  ...STEPS,
  ...MADE_SAFE,
  ...LIFTED,
  ...PEOPLE,
  ...DECLARED,
  ...UNPROVED,
];
