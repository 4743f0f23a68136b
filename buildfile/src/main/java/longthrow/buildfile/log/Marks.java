package longthrow.buildfile.log;

import java.util.List;

/**
 * The decimal mark, and what parts thousands.
 * @param mark     '.' or ','
 * @param grouping 0 where nothing parts thousands
 * @param asks     whether cells can be read in two ways
 * @param example  such a cell; empty where none
 */
record Marks(char mark, char grouping, boolean asks, String example) {
    static Marks of(List<String> cells, char told) {
        int comma = 0;
        int point = 0;
        int byComma = 0;
        int byPoint = 0;
        String twoWays = "";
        String twoWaysByPoint = "";
        for (String cell : cells) {
            if (Look.of(cell) != Look.NUMBER) {
                continue;
            }
            if (Look.isGrouped(cell)) {
                byComma += Look.isGroupedByComma(cell) ? 1 : 0;
                byPoint += Look.isGroupedByComma(cell) ? 0 : 1;
            } else if (Look.isTwoWays(cell)) {
                twoWays = cell.indexOf(',') >= 0 ? cell : twoWays;
                twoWaysByPoint = cell.indexOf('.') >= 0 ? cell : twoWaysByPoint;
            } else {
                comma += cell.indexOf(',') >= 0 ? 1 : 0;
                point += cell.indexOf('.') >= 0 ? 1 : 0;
            }
        }
        if (told != 0) {
            return new Marks(told, told == '.' ? ',' : '.', false, "");
        }
        if ((byComma > 0 || point > 0) && (byPoint > 0 || comma > 0)) {
            return new Marks('.', (char) 0, true, "1,5 beside 1.5"); // both marks for decimals in one log
        }
        if (byPoint > 0 || comma > 0) {
            return new Marks(',', byPoint > 0 ? '.' : 0, byPoint == 0 && !twoWaysByPoint.isEmpty(), twoWaysByPoint);
        }
        return new Marks('.', byComma > 0 ? ',' : 0, byComma == 0 && !twoWays.isEmpty(), twoWays);
    }
}
