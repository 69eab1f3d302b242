/** Cabinet models for people who know a cabinet's drawing but not its parts. */
package org.docksweep.fleet.template;
