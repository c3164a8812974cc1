import { giveTime } from '../src/shop/work/apart.ts';

/** No test is answered otherwise because its machine is loaded. */
giveTime(600_000);
