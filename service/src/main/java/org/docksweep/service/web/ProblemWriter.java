package org.docksweep.service.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.docksweep.contract.Problem;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** Writes a refusal where no controller is reached: in filters and in the security chain. */
@Component
public class ProblemWriter {
    private final JsonMapper mapper;

    ProblemWriter(JsonMapper mapper) {
        this.mapper = mapper;
    }

    /**
     * Answers with a refusal.
     *
     * @param request request refused
     * @param response its response, not yet committed
     * @param refusal why
     * @throws IOException if the client is gone
     */
    public void write(HttpServletRequest request, HttpServletResponse response, Refusal refusal) throws IOException {
        Problem problem = refusal.problem(request.getRequestURI());
        byte[] body = mapper.writeValueAsString(problem).getBytes(StandardCharsets.UTF_8);
        response.setStatus(problem.status());
        response.setContentType(Problem.MEDIA_TYPE);
        response.setContentLength(body.length);
        response.getOutputStream().write(body);
    }
}
