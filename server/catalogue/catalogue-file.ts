/** The name of the catalogue in the folder of the built kernel. */
export const catalogueFile = 'methods.json'
