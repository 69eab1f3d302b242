package org.docksweep.service.measurements;

import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface Curves extends JpaRepository<Curve, UUID> {}
