package org.docksweep.service.procedures;

import org.springframework.data.jpa.repository.JpaRepository;

interface BenchDataRows extends JpaRepository<BenchDataRow, String> {}
