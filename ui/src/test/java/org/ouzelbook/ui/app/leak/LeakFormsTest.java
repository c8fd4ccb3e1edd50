package org.ouzelbook.ui.app.leak;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * One secret in the many forms in which people and programs write it. The nest’s places in metres were worked out with PROJ 9.1 (EPSG 27700,
 * 32629, 2157 and 3857), those in minutes and seconds by hand.
 */
class LeakFormsTest {
    @TempDir
    static Path folder;

    private static LeakBook book;

    @BeforeAll
    static void makeABook() throws IOException {
        book = LeakBook.in(folder);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "thanks to Brekke, Ina",
                "thanks to Ina\nBrekke",
                "Ina_Brekke.jpg",
                "InaBrekke",
                "ina.brekke@arrel.example",
                "/home/inabrekke/birds",
                "C:\\Users\\Ina Brekke\\birds.csv",
                "Ina%20Brekke",
                "?observer=Ina+Brekke",
                "Ina\u200bBrekke",
                "In\u00ada Brek\u00adke",
                "Ina\u00a0Brekke",
                "Brek-\n  ke",
                "so Brekke told us",
                "BREKKE",
                "Jerome Ozturk",
                "JÉRÔME ÖZTÜRK",
                "Je\u0301ro\u0302me O\u0308ztu\u0308rk",
                "J&eacute;r&ocirc;me &Ouml;zt&uuml;rk",
                "<p>J&#xe9;r&#244;me &Ouml;zt&uuml;rk</p>",
                "{\"by\":\"J\\u00e9r\\u00f4me \\u00d6zt\\u00fcrk\"}",
                "J%C3%A9r%C3%B4me %C3%96zt%C3%BCrk",
                "Seán O'Hara",
                "Sean OHara",
                "<p><b>Ina</b> Brekke</p>",
                "<p>I<span class=\"x\">na</span> Bre<i>kke</i></p>",
                "<w:p><w:r><w:t>Ina</w:t></w:r><w:r><w:t xml:space=\"preserve\"> Brekke</w:t></w:r></w:p>",
                "<!-- by Ina Brekke -->",
                "<script>var who=\"Ina Brekke\";</script>",
                "he is Wotherspoon",
                "ring ZZ 98765",
                "ring ZZ-98765",
                "ring zz98765",
                "ring Z Z 9 8 7 6 5",
                "ring ZZ.98765",
                "ring AB12345",
                "ring AB-12345",
                "R/N-m/W",
                "R/Nm/W",
                "R/N m / W",
                "KX 7",
                "KX-7",
                "nest_KX7_2026",
                "%4BX7"
            })
    void aNameOrRingIsFound(String text) throws IOException {
        assertThat(book.kinds(text)).contains(Leak.Kind.NAME);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "57.2299N 6.4120W",
                "57.2299N, 6.4120W",
                "N57.2299 W6.4120",
                "N 57.2299° W 6.4120°",
                "57.2299° N, 6.4120° W",
                "57,2299° N; 6,4120° W",
                "@57.2299,-6.4120,17z",
                "geo:57.2299,-6.4120",
                "?q=57.2299%2C-6.4120",
                "#map=17/57.2299/-6.4120",
                "57°13.797'N 6°24.718'W",
                "N 57° 13.797 W 006° 24.718",
                "57 13.797N 6 24.718W",
                "57 13 47.8 N 6 24 43.1 W",
                "N57°13'47.8\" W6°24'43.1\"",
                "57º13'47.8\"N 6º24'43.1\"W",
                "57° 13′ 47.8″ N, 6° 24′ 43.1″ W",
                "57d13m47.8s N 6d24m43.1s W",
                "57:13:47.8N 6:24:43.1W",
                "57d1348e\t06d2443e",
                "[572.299E-1,-641.20E-2]",
                "latitude: 57.2299\nlongitude: -6.4120",
                "{\n  \"lat\": 57.2299,\n  \"lon\": -6.4120\n}",
                "{\"latitudeE7\":572299509,\"longitudeE7\":-64119737}",
                "latitude,what,who,when,how,many,longitude\n57.2299,a bird of the water that I saw,me,2026,well,2,-6.4120\n",
                "NG 338 240",
                "NG338240",
                "ng 33837 24096",
                "NG 3383 2409",
                "29V 656224 6345951",
                "29N 656224 6345951",
                "x;y\n656224;6345951",
                "133837, 824096",
                "{\"x\":133837.4,\"y\":824096.8}",
                "824096 133837",
                "ITM 695889 1166299",
                "-713777.64, 7807264.60"
            })
    void coordinatesAreFound(String text) throws IOException {
        assertThat(book.kinds(text)).contains(Leak.Kind.COORDINATES);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "km 3,413",
                "rkm 3.413",
                "river km 3.41",
                "kilometre 3.413",
                "km 3+413",
                "from km 2 to km 3.413",
                "km 1.20 to 3.413",
                "3.413 km from the mouth",
                "3,41 km above the mouth",
                "3413 m upstream of the mouth",
                "chainage 3413",
                "chainage 3,413 m",
                "310 m above Mill Bridge",
                "313 metres upstream of the mill bridge",
                "1640 m above Dubh Brae"
            })
    void aPlaceAlongTheWaterIsFound(String text) throws IOException {
        assertThat(book.kinds(text)).contains(Leak.Kind.RIVER_KM);
    }

    @ParameterizedTest
    @ValueSource(strings = {"the nest under mill  bridge", "nest at the mill-bridge", "4 eggs at Dubh Brae"})
    void aLandmarkOfANestIsFound(String text) throws IOException {
        assertThat(book.kinds(text)).contains(Leak.Kind.LANDMARK);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Zone 29 of 656 000 people, 57 % of 13 visits and 47 birds",
                "We saw 57 birds in 2026, 13.797 per site, N = 6",
                "Version 57.2299",
                "NG 900 900",
                "call 0571 22995 or 641197",
                "12,345 birds, 98765 people",
                "AB 12 and 345",
                "R and N, m or W",
                "a mile of 1.41 km, 300 m above Mill Bridge",
                "the weir at 6.2 km from the mouth",
                "100%20 of 5% and 20%",
                "A&B 12345 units",
                "ina and the others; al, brook & co.",
                "the mill bridge is old. There is no nest.",
                "[57.2299,6.412E-4]",
                "57d1348e-1111-4111-8111-111111111111\t06d2443e-2222-4222-8222-222222222222"
            })
    void whatIsHarmlessPasses(String text) throws IOException {
        assertThat(book.kinds(text)).isEmpty();
    }

    @Test
    void aNameIsToldOnceWithItsSurname() throws IOException {
        assertThat(book.check()
                        .in("x.txt", "Ina Brekke and Ina Brekke".getBytes(java.nio.charset.StandardCharsets.UTF_8)))
                .hasSize(1);
    }

    @Test
    void theNameOfTheFileIsRead() throws IOException {
        assertThat(book.kinds("walk of Ina Brekke.txt", new byte[] {'x'})).containsExactly(Leak.Kind.NAME);
        assertThat(book.kinds("/home/Ina Brekke/walk.txt", new byte[] {'x'})).isEmpty();
    }
}
