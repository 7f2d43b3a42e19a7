/** What a page is put together from, beside the charts. */
export { cautions } from './cautions.ts';
export { embeddedStudy, type EmbeddedStudy } from './embedded-study.ts';
export { headline } from './headline.ts';
export { liveStudy, type LiveStudy } from './live-study.ts';
export { openPage, type OpenPage } from './open-page.ts';
export { studyWords } from './study-words.ts';
export { describeHouse, type HouseEditor } from './house-editor.ts';
export { allShown } from './house-answer.ts';
export { changedScenario } from './changed-scenario.ts';
export { complaintsNote } from './trouble.ts';
export { runStudy, type StudyProgress, type StudyRunOptions } from '../study-client.ts';
export { alternativesHeadline } from './alternatives-headline.ts';
export { openAlternatives, pairShown, unitLegs } from './alternatives-page.ts';
export { liveSeasons } from './alternatives-seasons.ts';
export { alternativesWhy } from './alternatives-why.ts';
export { yearHeadline } from './year-headline.ts';
export { liveYear, openYear, yearShown } from './year-page.ts';
