/** The list page works without this; with it, a refusal is said in place and a notebook can be renamed. */
import '../styles/list-page.css'
import { improveList } from '../list/list-page.js'

improveList(document)
