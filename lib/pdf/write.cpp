#include "pdf/write.h"

#include "base/text.h"
#include "pdf/content.h"

namespace undersheet::pdf {
namespace {

std::string colour_space(const Picture& picture) {
    switch (picture.colours) {
    case Colours::grey:
        return "/DeviceGray";
    case Colours::cmyk_inverted:
        return "/DeviceCMYK/Decode[1 0 1 0 1 0 1 0]";
    case Colours::palette: {
        std::string colours;
        for (const char byte : picture.palette) colours += hex4(static_cast<unsigned char>(byte)).substr(2);
        return "[/Indexed/DeviceRGB " + std::to_string(picture.palette.size() / 3 - 1) + "<" + colours + ">]";
    }
    case Colours::rgb:
        break;
    }
    return "/DeviceRGB";
}

std::string filter_of(const Picture& picture) {
    if (picture.filter == Filter::jpeg) return "/Filter/DCTDecode";
    if (picture.filter == Filter::flate) return "/Filter/FlateDecode";
    return "/Filter/FlateDecode/DecodeParms<</Predictor 15/Colors " +
           std::string(picture.colours == Colours::rgb ? "3" : "1") + "/BitsPerComponent " +
           std::to_string(picture.bits) + "/Columns " + std::to_string(picture.width) + ">>";
}

int add_picture(Objects& objects, const Picture& picture) {
    return objects.add_stream("/Type/XObject/Subtype/Image/Width " + std::to_string(picture.width) +
                                  "/Height " + std::to_string(picture.height) + "/BitsPerComponent " +
                                  std::to_string(picture.bits) + "/ColorSpace" + colour_space(picture) +
                                  filter_of(picture),
                              picture.bytes);
}

// The bookmarks as a tree: each knows its parent, its neighbours and its children.
class Outline {
public:
    Outline(Objects& objects, const File& file, const std::vector<int>& pages)
        : objects_(objects), file_(file), pages_(pages) {
        for (std::size_t i = 0; i < file.bookmarks.size(); ++i) numbers_.push_back(objects.reserve());
    }
    // The number of the root; 0 where there are none.
    int write() {
        if (numbers_.empty()) return 0;
        const int root = objects_.reserve();
        objects_.write(root, "<</Type/Outlines" + children(0, numbers_.size(), root) + ">>");
        return root;
    }

private:
    // Of the bookmarks from `first` to before `end`; writes them all.
    std::string children(std::size_t first, std::size_t end, int parent) {
        if (first >= end) return {};
        std::vector<std::size_t> heads;
        for (std::size_t i = first; i < end; ++i)
            if (heads.empty() || file_.bookmarks[i].level <= file_.bookmarks[heads.front()].level)
                heads.push_back(i);
        for (std::size_t i = 0; i < heads.size(); ++i) {
            const std::size_t next = i + 1 < heads.size() ? heads[i + 1] : end;
            const int before = i > 0 ? numbers_[heads[i - 1]] : 0;
            one(heads[i], next, parent, before, next < end ? numbers_[next] : 0);
        }
        return "/First " + named(numbers_[heads.front()]) + "/Last " + named(numbers_[heads.back()]) +
               "/Count " + std::to_string(end - first);
    }

    void one(std::size_t at, std::size_t end, int parent, int before, int after) {
        const Bookmark& mark = file_.bookmarks[at];
        std::string body = "<</Title" + text_string(mark.title) + "/Parent " + named(parent) + "/Dest[" +
                           named(pages_[mark.page]) + "/XYZ null " +
                           number_text(file_.height_pt - mark.down_pt) + " null]";
        if (before != 0) body += "/Prev " + named(before);
        if (after != 0) body += "/Next " + named(after);
        objects_.write(numbers_[at], body + children(at + 1, end, numbers_[at]) + ">>");
    }

    Objects& objects_;
    const File& file_;
    const std::vector<int>& pages_;
    std::vector<int> numbers_;
};

std::vector<int> add_pages(Objects& objects, const File& file, int tree) {
    std::string pictures;
    for (std::size_t i = 0; i < file.pictures.size(); ++i)
        pictures += "/P" + std::to_string(i) + " " + named(add_picture(objects, file.pictures[i]));
    UsedFonts used;
    const int resources = objects.reserve();
    std::vector<int> pages;
    for (const Page& page : file.pages) {
        const int drawn = objects.add_deflated("", content_of(page, file, used));
        pages.push_back(objects.add("<</Type/Page/Parent " + named(tree) + "/Resources " + named(resources) +
                                    "/Contents " + named(drawn) + ">>"));
    }
    std::string fonts;
    if (!used.regular.empty()) fonts += "/F0 " + named(add_font(objects, font(Face::regular), used.regular));
    if (!used.bold.empty()) fonts += "/F1 " + named(add_font(objects, font(Face::bold), used.bold));
    objects.write(resources, "<</Font<<" + fonts + ">>/XObject<<" + pictures + ">>>>");
    return pages;
}

// ASCII letters, digits and hyphens, as BCP 47 has them: anything else would be no name of a language.
std::string language_entry(const std::string& language) {
    const bool is_one = !language.empty() && language.find_first_not_of("abcdefghijklmnopqrstuvwxyz"
                                                                        "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
                                                                        "0123456789-") == std::string::npos;
    return is_one ? "/Lang(" + language + ")" : "";
}

std::string information(const File& file) {
    std::string entries;
    if (!file.title.empty()) entries += "/Title" + text_string(file.title);
    if (!file.author.empty()) entries += "/Author" + text_string(file.author);
    if (!file.subject.empty()) entries += "/Subject" + text_string(file.subject);
    return "<<" + entries + ">>";
}

} // namespace

std::string write(const File& file) {
    Objects objects;
    const int catalogue = objects.reserve(), tree = objects.reserve();
    const std::vector<int> pages = add_pages(objects, file, tree);
    std::string kids;
    for (const int page : pages) kids += named(page) + " ";
    objects.write(tree, "<</Type/Pages/Count " + std::to_string(pages.size()) + "/Kids[" + kids +
                            "]/MediaBox[0 0 " + number_text(file.width_pt) + " " +
                            number_text(file.height_pt) + "]>>");
    const int outline = Outline(objects, file, pages).write();
    objects.write(catalogue, "<</Type/Catalog/Pages " + named(tree) + language_entry(file.language) +
                                 (outline == 0 ? "" : "/Outlines " + named(outline)) +
                                 "/ViewerPreferences<</DisplayDocTitle true>>>>");
    return objects.file(catalogue, objects.add(information(file)));
}

} // namespace undersheet::pdf
