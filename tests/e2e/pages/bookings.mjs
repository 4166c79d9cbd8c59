// Two invented customers with cars of one invented family, and what service information says of it.

/** The first car of the family: its cards have to be looked up. */
export const FIRST = {
  message: "Hi, this is Dana Quill, front left hums from 40 mph and gets louder when I turn right. "
    + "VIN 1ZZBD4RA6K1004417, plate KLM 4821, 12 Alder Lane, Fernbrook. Call 555-0142",
  plate: "KLM 4821",
  found: {
    "VIN": "1ZZBD4RA6K1004417", "Plate": "KLM 4821", "Customer's name": "Dana Quill", "Phone": "555-0142",
    "Address of the work": "12 Alder Lane, Fernbrook",
  },
  complaint: "Hi, front left hums from 40 mph and gets louder when I turn right.",
};

/** The second car of the family. */
export const SECOND = {
  message: "Robin Tarn here, a growl at the front left on the highway. Plate QRS 7730, "
    + "VIN 1ZZBD4RA0K1008852, 88 Mill Road, Fernbrook. 555-0163",
};

export const FAMILY = "2019 Marten, 1.6, front drive";

/** An invented document; no figure in it is one of a real car. */
export const SOURCE = { document: "Marten service sheet 7", page: "41", who: "R. Okafor" };

/** Value, unit, and what else a card says, by the card's step. */
export const FIGURES = {
  "Spec: axle nut": ["180", "lb-ft", { angle: "60", position: "In the air, brake held", source: SOURCE }],
  "Spec: hub bolts": ["55", "lb-ft"],
  "Spec: bracket bolts": ["80", "lb-ft"],
  "Spec: guide pin bolts": ["22", "lb-ft"],
  "Spec: lug nuts": ["85", "lb-ft"],
  "Spec: play limit": ["2.0", "thou"],
};
