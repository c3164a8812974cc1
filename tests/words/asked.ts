import type { LengthUnit } from '../../shared/words/print.ts';

/** Where a walk through the pages begins. */
export const FROM = ['/', '/cover', '/stud', '/criteria', '/how', '/jobs.csv', '/catalogue/family.csv'];

/** Questions with answers, as a person of either shop types them; what a form asks beside them is left out. */
export const ASKED: Readonly<Record<LengthUnit, readonly string[]>> = {
  in: [
    '/stud?unit=in&stack=two-piece-four-3-8-24&pull=0.16&torque=27&torqueFrom=maker&engine=300&kFrom=zinc&prevTorque=2',
    '/stud?unit=in&layer.0=plate&thickness.0=0.125&nutThread=3/8-24&nutHeight=0.328&pull=0.16',
    '/stud/slip?stack=two-piece-four-3-8-24&pull=0.16&stud=long-3-8-24&torque=27&torqueFrom=maker&engine=300&unit=in',
    '/stud/slip?stack=one-piece-four-3-8-24&pull=0.16&stud=long-3-8-24&unit=in',
    '/stud/gap?unit=in&depth=0.75&standsOut=0.5&hub=0.9&hubLeast=0.6&gapLeast=0.125&gapMost=0.1875&stack=two-piece-four-3-8-24',
    '/stud/gap?unit=in&depth=0.75&standsOut=-0.2&separator=0.03&shim=0.06',
    '/stud/flexplate?unit=in&total=0.125&within=0.01&nutThread=3/8-24',
    '/stud/flexplate?unit=in&style=two-piece&total=0.4&nutThread=3/8-24&nutHeight=0.328',
    '/stud/stacks?unit=in&stud=long-3-8-24',
  ],
  mm: [
    '/stud?unit=mm&stack=two-piece-four-3-8-24&pull=4&torque=37&torqueFrom=maker&engine=400&kFrom=zinc&prevTorque=2',
    '/stud?unit=mm&layer.0=plate&thickness.0=3.2&nutThread=M10x1.5&nutHeight=8&pull=4',
    '/stud/slip?stack=two-piece-four-3-8-24&pull=4&stud=long-3-8-24&torque=37&torqueFrom=maker&engine=400&unit=mm',
    '/stud/slip?stack=one-piece-four-3-8-24&pull=4&stud=long-3-8-24&unit=mm',
    '/stud/gap?unit=mm&depth=19&standsOut=12.7&hub=23&hubLeast=15&gapLeast=3&gapMost=4.8&stack=two-piece-four-3-8-24',
    '/stud/gap?unit=mm&depth=19&standsOut=-5&separator=1&shim=1.5',
    '/stud/flexplate?unit=mm&total=3.2&within=0.2&nutThread=3/8-24',
    '/stud/flexplate?unit=mm&style=two-piece&total=10&nutThread=3/8-24&nutHeight=8',
    '/stud/stacks?unit=mm&stud=long-3-8-24',
  ],
};
