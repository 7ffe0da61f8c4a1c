/** The page of methods works without this; with it, the list narrows while words are typed, and a link opens what it leads to. */
import '../styles/methods-page.css'
import { improveMethods } from '../methods/methods-page.js'

improveMethods(document, window)
