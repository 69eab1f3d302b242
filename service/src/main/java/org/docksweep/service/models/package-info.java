/** Cabinet and driver models, references of the models, limits in force. */
package org.docksweep.service.models;
