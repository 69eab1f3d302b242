package org.docksweep.service.people;

import jakarta.annotation.security.RolesAllowed;
import java.time.Duration;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.Problem;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.contract.SignOn;
import org.docksweep.service.security.SignedOn;
import org.docksweep.service.store.Transactions;
import org.docksweep.service.web.Refusal;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.Authentication;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RolesAllowed("DOCK")
class SignOnController {
    private final SignOns signOns;
    private final Tries tries;
    private final Transactions transactions;

    SignOnController(SignOns signOns, Tries tries, Transactions transactions) {
        this.signOns = signOns;
        this.tries = tries;
        this.transactions = transactions;
    }

    @PostMapping(ApiPaths.SIGN_ONS)
    ResponseEntity<Object> signOn(@RequestBody SignOn.Order order, Authentication authentication) {
        String kiosk = ((SignedOn) authentication.getDetails()).kiosk();
        Duration wait = tries.wait(kiosk);
        if (!wait.isZero()) {
            return tooMany(wait);
        }
        // Forced to the disk like every write; its line in the log tells more than that something was stored.
        SignOns.Try result = transactions.writeNotedByItself(() -> signOns.signOn(order, kiosk));
        if (result.signOn() != null) {
            return ResponseEntity.status(HttpStatus.CREATED).body(result.signOn());
        }
        tries.wrong(kiosk);
        if (!result.retryAfter().isZero()) {
            return tooMany(result.retryAfter());
        }
        throw Refusal.of(
                ProblemTypes.WRONG_BADGE_OR_PIN,
                "Badge or PIN is wrong",
                401,
                "badge or PIN is wrong",
                "Scan the badge and type the PIN again; a manager can set a new PIN.");
    }

    private static ResponseEntity<Object> tooMany(Duration wait) {
        long seconds = wait.toSeconds() + 1;
        Problem problem = Refusal.of(
                        ProblemTypes.TOO_MANY_TRIES,
                        "Too many wrong tries",
                        429,
                        "no try is taken for another " + seconds + " s",
                        "Wait that long; a manager can open the account at once by setting a new PIN.")
                .problem(ApiPaths.SIGN_ONS);
        return ResponseEntity.status(HttpStatus.TOO_MANY_REQUESTS)
                .header(HttpHeaders.RETRY_AFTER, Long.toString(seconds))
                .contentType(MediaType.parseMediaType(Problem.MEDIA_TYPE))
                .body(problem);
    }

    @DeleteMapping(ApiPaths.CURRENT_SIGN_ON)
    @ResponseStatus(HttpStatus.NO_CONTENT)
    void end(Authentication authentication) {
        SignedOn who = (SignedOn) authentication.getDetails();
        if (who.tokenSha256() == null) {
            throw Refusal.wrongState(
                    null, "nobody is signed on with this token: it is the kiosk's own", "Send the token of a sign-on.");
        }
        transactions.write(() -> {
            signOns.end(who.tokenSha256());
            return who;
        });
    }
}
