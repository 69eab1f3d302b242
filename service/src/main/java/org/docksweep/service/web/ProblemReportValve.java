package org.docksweep.service.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.apache.catalina.connector.Request;
import org.apache.catalina.connector.Response;
import org.apache.catalina.valves.ErrorReportValve;
import org.docksweep.contract.Problem;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tools.jackson.databind.json.JsonMapper;

/** Problem details instead of Tomcat's page, for requests so broken that they never reach the application. */
final class ProblemReportValve extends ErrorReportValve {
    private static final Logger LOG = LoggerFactory.getLogger(ProblemReportValve.class);
    private static final JsonMapper MAPPER = new JsonMapper();

    @Override
    protected void report(Request request, Response response, Throwable thrown) {
        int status = response.getStatus();
        if (status < HttpServletResponse.SC_BAD_REQUEST
                || response.getContentWritten() > 0
                || !response.setErrorReported()) {
            return;
        }
        Problem problem = ProblemAdvice.ofStatus(status, request).problem(null);
        try {
            response.setContentType(Problem.MEDIA_TYPE);
            response.setCharacterEncoding(StandardCharsets.UTF_8.name());
            response.getReporter().write(MAPPER.writeValueAsString(problem));
            response.finishResponse();
        } catch (IOException | IllegalStateException e) {
            LOG.debug("the client was gone before the error could be told", e);
        }
    }
}
