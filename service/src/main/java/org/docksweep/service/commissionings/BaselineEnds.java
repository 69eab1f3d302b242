package org.docksweep.service.commissionings;

import org.springframework.data.jpa.repository.JpaRepository;

interface BaselineEnds extends JpaRepository<BaselineEnd, BaselineEnd.Key> {}
