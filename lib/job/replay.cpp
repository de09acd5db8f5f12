// One view after another: an entry moves the view its writer had, joined from those of the entries it stands on.
#include "job/replay.h"

#include "job/replayer.h"

#include <algorithm>

namespace undersheet::job {
namespace {

using entry::Entry;

class Views {
public:
    Views(const Job& job, const Counted& counted, const method::Method& method, const Told& told)
        : entries_(*job.entries), told_(told), replayer_(job.roof, counted, method, told), first_{job.parts} {
        first_.goes_on = job.within.has_value();
        if (!first_.goes_on) first_.handed_over = job.handed_over;
        standing_.insert(counted.standing.begin(), counted.standing.end());
    }

    View last() {
        if (told_.is_one_run()) return along_one_run();
        count_followers();
        views_.resize(entries_.size());
        for (std::size_t i = 0; i < entries_.size(); ++i) {
            View view = joined_before(told_.causality().parents(i), i);
            if (stands(i)) replayer_.take(view, entries_[i]);
            views_[i] = std::move(view);
        }
        return joined_before(told_.causality().tips(), std::nullopt);
    }

private:
    View along_one_run() {
        View view = std::move(first_);
        for (const Entry& entry : entries_) {
            if (standing_.contains(&entry)) replayer_.take(view, entry);
        }
        return view;
    }

    bool stands(std::size_t entry) const { return standing_.contains(&entries_[entry]); }

    // How many entries still stand on each: a view nobody needs any more is moved on, not copied.
    void count_followers() {
        followers_.resize(entries_.size());
        for (std::size_t i = 0; i < entries_.size(); ++i) {
            for (const std::size_t before : told_.causality().parents(i)) ++followers_[before];
        }
        for (const std::size_t tip : told_.causality().tips()) ++followers_[tip];
    }

    View view_of(std::size_t entry) {
        if (--followers_[entry] == 0) return std::move(views_[entry]);
        return views_[entry];
    }

    View joined_before(const std::vector<std::size_t>& parents, std::optional<std::size_t> by) {
        if (parents.empty()) return first_;
        View view = view_of(parents.front());
        if (parents.size() == 1) return view;
        for (std::size_t i = 1; i < parents.size(); ++i)
            view = joined_views(std::move(view), view_of(parents[i]));
        replayer_.catch_up(view, known_to(parents));
        replayer_.finish_parts(view, by ? entries_[*by] : entries_[parents.back()]);
        return view;
    }

    std::vector<const Entry*> known_to(const std::vector<std::size_t>& parents) const {
        std::vector<const Entry*> known;
        for (std::size_t i = 0; i < entries_.size(); ++i) {
            const bool is_known = std::any_of(parents.begin(), parents.end(), [&](std::size_t parent) {
                return told_.causality().knew(parent, i);
            });
            if (is_known && stands(i)) known.push_back(&entries_[i]);
        }
        return known;
    }

    const EntryList& entries_;
    const Told& told_;
    Replayer replayer_;
    View first_;
    std::set<const Entry*> standing_;
    std::vector<std::size_t> followers_;
    std::vector<View> views_;
};

} // namespace

void replay(Job& job, const Counted& counted, const method::Method& method, const Told& told) {
    View view = Views(job, counted, method, told).last();
    job.parts = std::move(view.parts);
    job.handed_over = view.handed_over;
    for (const Problem& problem : view.problems) job.problems.push_back(problem.says);
    for (const Part& part : job.parts) {
        if (part.is_contested()) job.to_settle.push_back(settle_item(part));
    }
    for (SettleItem& item : view.settled) job.settled.push_back(std::move(item));
}

} // namespace undersheet::job
