package org.ouzelbook.stats.simulate.skerra;

/** One page of birds with the mistakes that people make, to try the dry run on; the remarks say what is wrong. */
final class Mistakes {
    static final String CSV = """
            sighting,date,time,river,km,landmark,offset_m,species,count,activity,simultaneous_with,flew_to_km,turned_back,observer,remarks
            p1,14/03/2026,07:40,Arrel Water,5.5,,,dipper,1,song,,,,R.H.,nothing wrong here
            p2,31/04/2026,08:05,Arrel Water,6.1,,,dipper,2,,,,,R.H.,April has 30 days
            p3,14/03/2062,08:20,Arrel Water,7.0,,,dipper,1,song,,,,R.H.,a date still to come
            p4,14/03/2026,25:10,Arrel Water,7.4,,,dipper,1,,,,,R.H.,no such time
            p5,14/03/2026,08:50,Arrel Water,78,,,dipper,1,,,,,R.H.,the river is not so long: the point is missing
            p6,14/03/2026,09:05,Arrel Water,,the Bridge,,dipper,1,,,,,R.H.,which bridge?
            p7,14/03/2026,09:20,Arrel Water,,Long Wier,40,dipper,1,feeding,,,,R.H.,a slip of the pen
            p8,14/03/2026,09:35,Arrel Water,9.6,,,dooper,1,feeding,,,,R.H.,no such bird
            p9,14/03/2026,09:40,Arrel Water,9.8,,,dipper,a pair,,,,,R.H.,a count in words; that one is understood
            p10,14/03/2026,09:55,Arrel Water,10.4,,,dipper,1,fight,p77,,,R.H.,there is no p77
            p11,14/03/2026,10:10,Arrel Water,11.3,,,dipper,1,flew up,,,yes,R.H.,turned back where?
            p12,14/03/2026,10:25,Arrel Watter,12.4,,,dipper,1,song,,,,R.H.,no such river
            p13,,10:40,Arrel Water,12.9,,,dipper,1,song,,,,R.H.,no date
            p14,14/03/2026,10:50,Arrel Water,,,,dipper,1,song,,,,R.H.,no place
            """;

    private Mistakes() {}
}
