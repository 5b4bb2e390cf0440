// The signs that YAML is made of, as the numbers that reading a text one sign at a time compares.

export const tab = 9;
export const lineFeed = 10;
export const carriageReturn = 13;
export const space = 32;
export const quote = 34;
export const hash = 35;
export const apostrophe = 39;
export const comma = 44;
export const dash = 45;
export const colon = 58;
export const questionMark = 63;
export const openList = 91;
export const closeList = 93;
export const openMap = 123;
export const closeMap = 125;
