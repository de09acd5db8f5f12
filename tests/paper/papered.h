// A job with a paper in the making, for tests of a paper's pieces.
#pragma once

#include "paper/making.h"
#include "tests/paper/troubled_roof.h"

namespace undersheet::test {

struct Papered {
    explicit Papered(const Site& site, const std::string& now = "10:00")
        : job(site.fold(now)), judgement(job::judge(job, default_method(), default_kinds())),
          setting(test_setting()), making(job, judgement, setting, "inspection.name") {}
    job::Job job;
    job::Judgement judgement;
    paper::Setting setting;
    paper::Making making;
};

} // namespace undersheet::test
