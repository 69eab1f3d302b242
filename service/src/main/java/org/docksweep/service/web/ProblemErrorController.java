package org.docksweep.service.web;

import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.http.HttpServletRequest;
import org.docksweep.contract.Problem;
import org.springframework.boot.webmvc.error.ErrorController;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.RequestMapping;

/** Problem details for errors that no controller saw: unknown addresses, requests the container refused. */
@Controller
class ProblemErrorController implements ErrorController {

    @RequestMapping("${server.error.path:/error}")
    ResponseEntity<Problem> error(HttpServletRequest request) {
        int status = request.getAttribute(RequestDispatcher.ERROR_STATUS_CODE) instanceof Integer code ? code : 404;
        String instance = request.getAttribute(RequestDispatcher.ERROR_REQUEST_URI) instanceof String uri ? uri : null;
        Problem problem = ProblemAdvice.ofStatus(status, request).problem(instance);
        return ResponseEntity.status(problem.status())
                .contentType(MediaType.parseMediaType(Problem.MEDIA_TYPE))
                .body(problem);
    }
}
