package org.docksweep.service.security;

import java.util.List;
import java.util.Optional;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface AccessTokens extends JpaRepository<AccessToken, String> {
    @Query("select t from AccessToken t where t.openMarker = true")
    List<AccessToken> inForce();

    @Query("select t from AccessToken t where t.openMarker = true and t.name = :name")
    Optional<AccessToken> inForce(String name);
}
