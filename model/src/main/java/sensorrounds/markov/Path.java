package sensorrounds.markov;

import java.util.List;

/**
 * The sightings of one subject, in time order. The likelihood takes the times of the sightings as given: they must not
 * depend on the state otherwise than through what was seen before.
 *
 * @param id name for messages
 */
public record Path(String id, List<Sighting> sightings) {
    public Path {
        sightings = List.copyOf(sightings);
        for (int i = 1; i < sightings.size(); i++) {
            if (!(sightings.get(i).time() > sightings.get(i - 1).time())) {
                throw new IllegalArgumentException("subject " + id + " is seen at "
                        + sightings.get(i - 1).time() + " and then at "
                        + sightings.get(i).time() + "; expected increasing times, sort them or drop one");
            }
        }
    }
}
