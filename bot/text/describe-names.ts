/** The bed that stands for all of them while none has a name of its own; as a name it stands in sentences such as "Cover the beds by 17:00". */
export const THE_BEDS = 'the beds';
