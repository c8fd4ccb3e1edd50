package org.ouzelbook.ui.window;

import java.util.ArrayList;
import java.util.List;
import org.ouzelbook.ui.strip.StripView;

/** The way from all seasons, where every way begins, to what is shown now: the views that were gone through, each nearer. */
final class StripPath {
    private final List<StripView> views = new ArrayList<>(List.of(new StripView.AllSeasons()));

    /** {@return the view shown now} */
    StripView now() {
        return views.get(views.size() - 1);
    }

    /** {@return the whole way, all seasons first} */
    List<StripView> whole() {
        return List.copyOf(views);
    }

    /**
     * Goes to a view: back to it where the way led through it already, else on to it.
     *
     * @param view the view
     */
    void to(StripView view) {
        int before = views.indexOf(view);
        if (before >= 0) {
            views.subList(before + 1, views.size()).clear();
        } else if (view instanceof StripView.OneSeason) {
            views.subList(1, views.size()).clear();
            views.add(view);
        } else {
            if (now().getClass() == view.getClass()) {
                views.remove(views.size() - 1);
            }
            views.add(view);
        }
    }

    /**
     * Goes one view back.
     *
     * @return whether there was one
     */
    boolean out() {
        if (views.size() == 1) {
            return false;
        }
        views.remove(views.size() - 1);
        return true;
    }
}
