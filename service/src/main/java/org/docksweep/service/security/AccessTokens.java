package org.docksweep.service.security;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface AccessTokens extends JpaRepository<AccessToken, String> {
    @Query("select t from AccessToken t where t.openMarker = true")
    List<AccessToken> inForce();

    @Query("select t from AccessToken t where t.openMarker = true and t.name = :name")
    Optional<AccessToken> inForce(String name);

    @Query("select t from AccessToken t where t.openMarker is null and t.name = :name and t.revokedAt > :now")
    List<AccessToken> overlapping(String name, Instant now);

    @Query("select t from AccessToken t where t.openMarker = true and t.name > :after"
            + " and t.role <> org.docksweep.service.security.AccessToken.Role.SETUP order by t.name")
    List<AccessToken> page(String after, Limit limit);
}
