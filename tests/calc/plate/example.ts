export { COVER } from '../../../data/examples/bentCover.ts';
